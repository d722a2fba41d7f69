// Places: a farm folder is meant from where the command was given.
import { describe, expect, it } from 'vitest';
import { fromCaller, placesOf } from '../../../src/build/places.ts';

describe('placesOf', () => {
  it('takes the demo farm where nobody names one', () => {
    expect(placesOf({}, '/kit', '/kit')).toEqual({
      root: '/kit',
      farm: '/kit/content/farm',
      dist: '/kit/dist',
      workshop: '/kit/.pailside',
      prints: '/kit/prints',
    });
    expect(placesOf({ FARM_DIR: '' }, '/kit', '/kit').farm).toBe('/kit/content/farm');
  });

  it.each([
    ['absolute', { FARM_DIR: '/home/ana/farm', INIT_CWD: '/home/ana' }, '/home/ana/farm'],
    [
      'from where npm was called',
      { FARM_DIR: '../farm', INIT_CWD: '/home/ana/kit/docs' },
      '/home/ana/kit/farm',
    ],
    ['from the current folder without npm', { FARM_DIR: 'farm' }, '/here/farm'],
  ])('takes a farm folder %s', (_, env, farm) => {
    expect(placesOf(env, '/here', '/kit').farm).toBe(farm);
  });
});

describe('fromCaller', () => {
  it('leaves an absolute path alone', () => {
    expect(fromCaller('/prints', { INIT_CWD: '/home' }, '/here')).toBe('/prints');
  });
});
