// The written outlines of an udder seen from behind, its left half cut open: 800 by 600 units, body above, teats below.

/** The parts that can be named, from where milk is made to where it comes out. */
export const UDDER_PARTS = ['cells', 'pipes', 'cistern', 'teat', 'canal', 'half'] as const;
/** One of these parts. */
export type UdderPart = (typeof UDDER_PARTS)[number];

/** Where a part is pointed at (`tip`), where its name stands (`at`), and an outline around it (`ring`). */
interface Place {
  readonly tip: readonly [number, number];
  readonly at: readonly [number, number];
  readonly side: 'left' | 'right';
  readonly ring: string;
}

export const udderPlaces: Readonly<Record<UdderPart, Place>> = {
  cells: {
    tip: [284, 84],
    at: [224, 70],
    side: 'left',
    ring: '262,34! 422,34! 426,120 424,228 392,226 356,196 322,214 296,232 268,190 254,110',
  },
  pipes: {
    tip: [326, 236],
    at: [224, 214],
    side: 'left',
    ring: '302,206 330,176 366,190 404,214 414,244 392,272 352,264 318,274 298,244',
  },
  cistern: {
    tip: [326, 318],
    at: [224, 322],
    side: 'left',
    ring: '296,300 326,268 366,258 406,274 420,310 408,350 386,376 346,376 316,354',
  },
  teat: {
    tip: [516, 452],
    at: [544, 458],
    side: 'right',
    ring: '450,384! 468,430 474,480 480,516 494,532 510,516 514,480 522,430 536,378!',
  },
  canal: {
    tip: [354, 506],
    at: [224, 478],
    side: 'left',
    ring: '348,488 366,482 384,488 388,510 366,534 344,510',
  },
  half: {
    tip: [566, 296],
    at: [628, 312],
    side: 'right',
    ring: '434,16! 602,16! 618,100 610,212 584,314 544,378 492,410 450,402 434,370!',
  },
};

export const udderAt =
  '262,20! 598,20! 612,100 604,210 578,310 540,372 490,402 450,396 430,366 410,396 370,402 320,372 282,310 256,210 248,100';
export const leftTeat = '322,372! 334,430 341,480 348,514 366,530 384,514 391,480 398,430 410,394!';
export const rightTeat = '538,372! 526,430 519,480 512,514 494,530 476,514 469,480 462,430 450,394!';
/** The cut face of the left half, and the milk that stands in it. */
export const cutFace = '278,34! 420,34! 423,200 422,350 406,380 372,387 334,360 298,304 272,208 264,104';
export const teatFace = '336,388! 346,430 352,476 357,502 366,510 375,502 380,476 386,430 396,388!';
export const cistern =
  '306,304 326,278 364,267 400,282 412,310 403,344 386,364 379,376! 382,394 380,430 373,474 367,496! 361,474 353,430 350,394 354,376! 340,360 318,344';
/** Milk pipes, from the cistern outward. */
export const pipes = [
  '352,280 330,236 304,196 288,150 284,96',
  '364,276 352,220 338,166 330,112 328,66',
  '376,276 382,214 378,160 376,108 372,66',
  '392,286 406,240 410,190 406,136',
  '334,242 312,232 296,236;308,200 330,176;352,220 372,200;380,190 398,172;380,140 402,110;332,130 308,120;334,150 354,134',
] as const;
/** Where the bunches of milk-making sacs hang. */
export const bunches: readonly (readonly [number, number])[] = [
  [286, 72], [328, 56], [371, 57], [403, 98],
  [286, 128], [310, 108], [352, 122], [407, 148],
  [296, 178], [332, 170], [376, 128], [400, 204],
  [294, 238], [370, 186],
]; // prettier-ignore
