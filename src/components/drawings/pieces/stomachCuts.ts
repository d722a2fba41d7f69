// The written outlines of a doe's stomach, cut open, seen from her left side: 520 by 340 units, front at the left.

/** The four chambers, in the order in which they are told. */
export const CHAMBERS = ['rumen', 'reticulum', 'omasum', 'abomasum'] as const;
/** One of the four chambers. */
export type Chamber = (typeof CHAMBERS)[number];

export const gullet = '-30,-60 30,-14 84,36 120,66 148,88';
export const rumen =
  '146,66! 196,30 268,18 346,22 414,46 446,92 440,128! 426,140 440,156! 448,190 420,222 352,240 270,242 200,230 160,204! 146,170 138,120';
export const rumenInside =
  '158,78! 204,46 268,34 342,38 402,60 430,98 424,122! 410,140 424,158! 430,186 408,208 348,224 272,226 208,214 174,192! 160,156 154,112';
/** What lies in the rumen: new grass floating on top, and the soup below it. */
export const mat =
  '154,96! 200,84 270,92 340,82 428,92! 426,120 410,140 424,160! 360,152 290,158 220,148 160,152! 154,120';
export const soup =
  '160,152! 220,148 290,158 360,152 424,160! 430,186 408,208 348,224 272,226 208,214 174,192!';
export const reticulum = '146,84! 108,94 74,128 58,172 68,212 98,234 134,228 160,206! 148,172 140,130';
export const omasum = '152,238 190,230 224,244 236,276 218,306 182,316 146,302 130,270 136,248';
/** Its thin leaves, like the pages of a book. */
export const leaves =
  '150,254 154,280 166,302;168,246 170,280 178,310;186,241 189,280 190,312;204,244 208,278 204,308;220,254 224,278 215,300';
export const abomasum =
  '226,264! 262,252 316,256 372,252 420,240 456,222! 472,240! 446,278 398,308 330,322 272,318 232,304!';
export const folds =
  '246,282 300,276 360,274 420,258;250,296 310,292 370,288 424,268;270,308 330,306 380,296';
export const outlet = '462,230 486,222 510,228 530,244';

/** Cells of a honeycomb that lie within the reticulum: middle points, 22 units apart. */
export const combs: readonly (readonly [number, number])[] = [
  [124, 118], [102, 132], [124, 144], [80, 158], [102, 158], [125, 170], [80, 184], [102, 184], [125, 196], [91, 208], [113, 212], [136, 206],
]; // prettier-ignore

/** Outlines that ring one chamber. */
export const chamberRings: Readonly<Record<Chamber, string>> = { rumen, reticulum, omasum, abomasum };
