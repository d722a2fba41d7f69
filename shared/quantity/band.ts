// The grade bands; apart from the rounding for them, which carries exact arithmetic.

/** Grade bands of sheets and lessons. */
export type Band = 'k-2' | '3-5' | '6-8' | '9-12';
/** All bands, the youngest first. */
export const BANDS: readonly Band[] = Object.freeze(['k-2', '3-5', '6-8', '9-12']);
