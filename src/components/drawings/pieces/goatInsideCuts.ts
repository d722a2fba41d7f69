// Where the parts of GoatInsides lie: 620 by 440 units, from 0,-24; the doe as in SideDoe, facing left.

/** The parts that can be named, on the way from grass to milk. */
export const INSIDE_PARTS = [
  'mouth',
  'gullet',
  'rumen',
  'reticulum',
  'omasum',
  'abomasum',
  'gut',
  'blood',
  'udder',
] as const;
/** One of these parts. */
export type InsidePart = (typeof INSIDE_PARTS)[number];

/** Where the stomach of StomachBlock lies in her. */
export const STOMACH = Object.freeze({ x: 196, y: 172, scale: 0.43 });

/** Where a part is pointed at (`tip`), where its name stands (`at`), and an outline around it (`ring`). */
interface Place {
  readonly tip: readonly [number, number];
  readonly at: readonly [number, number];
  readonly side: 'left' | 'right' | 'above' | 'below';
  readonly ring: string;
}

const inStomach = (written: string) =>
  written.replace(
    /(-?[\d.]+),(-?[\d.]+)/g,
    (_, x: string, y: string) =>
      `${(STOMACH.x + Number(x) * STOMACH.scale).toFixed(1)},${(STOMACH.y + Number(y) * STOMACH.scale).toFixed(1)}`,
  );

export const insidePlaces: Readonly<Record<InsidePart, Place>> = {
  mouth: {
    tip: [66, 127],
    at: [42, 192],
    side: 'below',
    ring: '50,108 72,96 100,100 112,122 100,142 70,146 50,132',
  },
  gullet: {
    tip: [166, 152],
    at: [106, 240],
    side: 'below',
    ring: '104,110 142,98 164,130 182,172 218,184 254,178 262,200 222,212 172,200 146,150 134,126 106,130',
  },
  rumen: {
    tip: [318, 206],
    at: [318, 112],
    side: 'above',
    ring: inStomach(
      '146,66! 196,30 268,18 346,22 414,46 446,92 440,128! 426,140 440,156! 448,190 420,222 352,240 270,242 200,230 160,204! 146,170 138,120',
    ),
  },
  reticulum: {
    tip: [234, 236],
    at: [268, 40],
    side: 'above',
    ring: inStomach('146,84! 108,94 74,128 58,172 68,212 98,234 134,228 160,206! 148,172 140,130'),
  },
  omasum: {
    tip: [266, 290],
    at: [288, 350],
    side: 'below',
    ring: inStomach('152,238 190,230 224,244 236,276 218,306 182,316 146,302 130,270 136,248'),
  },
  abomasum: {
    tip: [364, 290],
    at: [306, 386],
    side: 'below',
    ring: inStomach(
      '226,264! 262,252 316,256 372,252 420,240 456,222! 472,240! 446,278 398,308 330,322 272,318 232,304!',
    ),
  },
  gut: {
    tip: [446, 240],
    at: [516, 258],
    side: 'right',
    ring: '408,212 430,196 460,202 472,230 468,264 448,286 420,280 406,250',
  },
  blood: {
    tip: [416, 173],
    at: [500, 98],
    side: 'above',
    ring: '232,172 290,160 360,157 430,164 474,190 482,226 472,270 456,308 440,304 452,262 462,226 452,200 420,182 360,176 290,178 236,192',
  },
  udder: {
    tip: [424, 330],
    at: [522, 346],
    side: 'right',
    ring: '372,292! 366,326 374,352 372,376 380,388 396,372 402,390 418,392 428,364 452,350 464,314 458,286!',
  },
};

/** The window cut into her side. */
export const windowAt =
  '216,176 262,168 320,164 380,162 430,168 468,188 478,222 470,268 448,298 414,300 384,300 340,310 296,315 244,306 212,296 202,268 206,220';
export const gulletAt = '76,124 108,120 140,112 160,138 174,176 204,192 236,190 266,210';
/** Blood: from the gut to the heart, and from the heart along the back down to the udder. */
export const veinAt = '440,212 424,192 380,184 320,184 262,186 236,206 226,262';
export const arteryAt =
  '222,270 212,236 222,196 254,177 320,171 390,170 440,180 466,206 466,246 452,284 438,308';
export const heartAt = '212,270 224,262 236,270 234,286 222,298 210,286';
export const gutAt =
  '422,275 440,286 460,278 458,264 436,262 424,252 436,240 458,246 470,236 458,222 436,228 424,216 438,202 458,206';
