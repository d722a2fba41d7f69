// How a farm folder looks from outside: links that lead nowhere or round in a circle are no files, and stop nothing.
import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { fileMark, folderMarks, sameMarks } from '../../../../src/desk/book/folderMarks.ts';
import { temporaryFolder } from '../../farm/farmFolder.ts';

it('marks the files that are there, whatever else lies beside them', () => {
  const farm = temporaryFolder();
  mkdirSync(join(farm, 'milkings'));
  writeFileSync(join(farm, 'does.csv'), 'id,name\n');
  writeFileSync(join(farm, 'milkings', '2026-05.csv'), 'date,milking,doe,amount\n');
  const before = folderMarks(farm);
  symlinkSync('round', join(farm, 'round'));
  symlinkSync('2026-06.csv', join(farm, 'milkings', '2026-06.csv'));
  symlinkSync('nowhere', join(farm, 'milkings', 'broken.csv'));
  expect([...folderMarks(farm).keys()]).toEqual(['does.csv', 'milkings/2026-05.csv']);
  expect(sameMarks(before, folderMarks(farm))).toBe(true);
  expect(fileMark(farm, 'milkings/2026-06.csv')).toBeNull();
});

it('marks nothing where the folder of milkings is a link to itself', () => {
  const farm = temporaryFolder();
  symlinkSync('milkings', join(farm, 'milkings'));
  expect([...folderMarks(farm)]).toEqual([]);
});
