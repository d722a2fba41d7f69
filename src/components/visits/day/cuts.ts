// How the visits of a day are told apart on paper: by their letter first, and by a cut that a bad copier keeps apart.

/** The cuts' classes, for the first visit, the second and so on; from the fifth on they come again. */
export const CUTS = Object.freeze(['bare', 'solid', 'striped', 'dotted'] as const);
