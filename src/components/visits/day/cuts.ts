// How the visits of a day are told apart on paper: by their letter first, and by a cut that a bad copier keeps apart.

/** The cuts, for the first visit, the second and so on; from the fifth on they come again. Hatched ones keep their letter on a bare patch. */
export const CUTS = Object.freeze([
  { ground: 'var(--milk)', letter: 'var(--ink)', patch: false },
  { ground: 'var(--ink)', letter: 'var(--milk)', patch: false },
  { ground: 'url(#trip-station-1)', letter: 'var(--ink)', patch: true },
  { ground: 'url(#trip-station-3)', letter: 'var(--ink)', patch: true },
] as const);
