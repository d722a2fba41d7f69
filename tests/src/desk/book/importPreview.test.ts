// The preview of an import has its time: a file that takes longer is given up, so that the barn need not wait for it.
import { expect, it } from 'vitest';
import { NO_CHOICES } from '../../../../shared/book/importTypes.ts';
import { readImportFile } from '../../../../src/desk/book/importFile.ts';
import { importPreview, TooLong } from '../../../../src/desk/book/importPreview.ts';
import { keeperOver, milkFarm } from './milkFarm.ts';

it('is given up where it takes too long, and is made where there is time', async () => {
  const keeper = await keeperOver(milkFarm());
  const file = await readImportFile(Buffer.from('date,milking,doe,amount\n2026-05-21,am,clover,7\n'));
  if (file.kind === 'unreadable') throw new Error(file.told.key);
  const held = { hash: 'x', name: 'x', file };
  expect(importPreview(held, keeper.book(), NO_CHOICES, {}).willWrite).toBe(1);
  expect(() => importPreview(held, keeper.book(), NO_CHOICES, {}, -1)).toThrow(TooLong);
});
