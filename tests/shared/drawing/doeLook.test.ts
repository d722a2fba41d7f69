// Each breed has its own ears and coats; each doe keeps her own face.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { doeBreed, doeLook } from '../../../shared/drawing/doeLook.ts';

describe('doeLook', () => {
  it('gives Nubians long ears, LaManchas tiny ones, and the Swiss breeds upright ones', () => {
    expect(doeLook('Nubian', 'a').ears).toBe('long');
    expect(doeLook('LaMancha', 'a').ears).toBe('tiny');
    for (const breed of ['Alpine', 'Saanen', 'Toggenburg']) expect(doeLook(breed, 'a').ears).toBe('upright');
  });

  it('keeps every Saanen white and every Toggenburg brown with white stripes', () => {
    fc.assert(
      fc.property(fc.string(), (id) => {
        expect(doeLook('Saanen', id).coat).toEqual({
          pattern: 'plain',
          base: 'milk',
          marks: 'milk',
          ears: 'milk',
        });
        expect(doeLook('Toggenburg', id).coat).toMatchObject({
          pattern: 'stripes',
          base: 'umber',
          marks: 'milk',
        });
      }),
    );
  });

  it('is the same for the same doe, whatever the letter case of her breed', () => {
    fc.assert(
      fc.property(fc.string(), fc.string(), (breed, id) => {
        expect(doeLook(breed, id)).toEqual(doeLook(breed, id));
        expect(doeLook('ALPINE', id)).toEqual(doeLook('alpine', id));
      }),
    );
  });

  it('tells a herd of one breed apart', () => {
    const ids = ['bea', 'cleo', 'dot', 'fern', 'ivy', 'juno', 'kit', 'maple'];
    for (const breed of ['Alpine', 'Nubian', 'Nigerian Dwarf', 'Toggenburg', 'Saanen']) {
      const faces = new Set(ids.map((id) => JSON.stringify(doeLook(breed, id))));
      expect(faces.size, breed).toBeGreaterThanOrEqual(6);
    }
  });

  it('uses more than one Alpine coat over a few does', () => {
    const coats = new Set(
      Array.from({ length: 12 }, (_, i) => JSON.stringify(doeLook('Alpine', `d${i}`).coat)),
    );
    expect(coats.size).toBeGreaterThan(1);
  });
});

describe('doeBreed', () => {
  it.each([
    ['French Alpine', 'alpine'],
    ['Anglo-Nubian', 'nubian'],
    ['la mancha', 'lamancha'],
    ['Sanen', 'saanen'],
    ['Saanen', 'saanen'],
    ['Toggenburger', 'toggenburg'],
    ['Nigerian Dwarf', 'nigerian'],
    ['Golden Guernsey', 'guernsey'],
    ['Guernsey', 'mixed'],
    ['Jersey', 'mixed'],
    ['', 'mixed'],
  ])('reads %j as %s', (word, breed) => {
    expect(doeBreed(word)).toBe(breed);
  });
});
