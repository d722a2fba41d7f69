// How long one doe is milked before visitors; apart from the usual stations, which a page has from its farm.

/** Minutes in which one doe is led up, milked by hand and let down: how long a milking may be watched. Common practice, no source. */
export const MILKING_DOE_MIN = 10;
