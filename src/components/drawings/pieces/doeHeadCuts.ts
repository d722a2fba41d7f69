// The written outlines of a doe's head from the front: face, ears, horns and the marks of her coat.
import type { CoatInk, DoeLook } from '../../../../shared/drawing/doeLook.ts';
import { mirrored } from '../../../../shared/drawing/outline.ts';

export const faceAt =
  '100,39 84,42 70,52 62,66 54,84 57,102 66,120 72,138 74,152 70,164 72,178 80,190 92,198 100,199 108,198 120,190 128,178 130,164 126,152 128,138 134,120 143,102 146,84 138,66 130,52 116,42';

/** The ear on the viewer's left, and the hollow in it; the other is its mirror image. */
export const ears: Readonly<Record<DoeLook['ears'], { outer: string; inner: string }>> = {
  upright: {
    outer: '66,62! 52,48 32,34 12,27 4,28! 8,44 20,62 38,76 60,84!',
    inner: '52,67 38,58 24,46 13,35',
  },
  long: {
    outer: '70,52! 54,54 42,68 32,96 20,128 14,160 18,184 28,194 40,188 48,166 54,136 62,106 66,84!',
    inner: '52,76 44,104 36,136 30,168',
  },
  tiny: { outer: '66,60! 54,54 46,58 44,68 50,78 62,82!', inner: '58,70 52,65' },
};

/** The horn on the viewer's left. */
export const horns = '72,54! 72,34 66,16 54,2 46,-4! 64,-1 80,12 90,30 93,46!';

interface Mark {
  readonly at: string;
  readonly dye: CoatInk;
}

const stripe = '76,64! 66,72 76,82! 84,96 82,112 80,132 78,150 84,156! 92,136 92,112 92,92 88,76';
const muzzle =
  '77,148 71,162 73,178 81,189 92,197 100,198 108,197 119,189 127,178 129,162 123,148 112,154 100,152 88,154';
const blaze =
  '92,42! 90,62 94,88 92,112 84,136 74,152 72,166 73,178 81,189 92,197 100,198 108,197 119,189 127,178 128,166 126,152 116,136 108,112 106,88 110,62 108,42!';
const thinBlaze = '94,44! 92,66 95,94 94,120 97,142! 103,142! 106,120 105,94 108,66 106,44!';
const patch = '100,41 84,43 70,53 63,66 56,84 58,102 67,119! 78,122 90,112 95,96 90,80 97,62';
const forehead =
  '100,41 84,44 71,53 64,66! 76,70 84,80 92,104 96,140! 104,140! 108,104 116,80 124,70 136,66! 129,53 116,44';
const cheekLine = '60,98! 70,104 77,116 80,132 78,150! 73,138 66,120';

/** The second colour of a coat, as blocks that lie within the face. */
export function marks(look: DoeLook): Mark[] {
  const { pattern, marks: dye, base } = look.coat;
  const pair = (at: string): Mark[] => [at, mirrored(at, 100)].map((one) => ({ at: one, dye }));
  if (pattern === 'stripes') return [...pair(stripe), { at: muzzle, dye }];
  if (pattern === 'mask') return [{ at: forehead, dye }, ...pair(cheekLine), { at: muzzle, dye }];
  if (pattern === 'blaze') return [{ at: dye === base || dye !== 'milk' ? thinBlaze : blaze, dye }];
  if (pattern === 'patch') return [{ at: look.right ? mirrored(patch, 100) : patch, dye }];
  return [];
}
