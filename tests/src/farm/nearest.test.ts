// The valid name that a mistyped one most likely meant.
import { describe, expect, it } from 'vitest';
import { nearestName } from '../../../src/farm/nearest.ts';

describe('nearestName', () => {
  it.each([
    ['clovr', 'clover'], ['colver', 'clover'], ['cloverr', 'clover'], ['CLOVEN', 'clover'],
    ['bel', 'bell'], ['bxyl', null], ['x', null], ['', null], ['juniper', null],
  ])('%s means %s', (text, name) => {
    expect(nearestName(text, ['clover', 'bell', 'B7'])).toBe(name);
  }); // prettier-ignore
  it('takes the nearest of several, and the first of equals', () => {
    expect(nearestName('marigld', ['marigolds', 'marigold'])).toBe('marigold');
    expect(nearestName('doe4', ['doe1', 'doe2'])).toBe('doe1');
  });
  it('suggests nothing for short names with any slip, and passes over very long ones', () => {
    expect(nearestName('lb', ['L'])).toBeNull();
    expect(nearestName('b7', ['B7'])).toBe('B7');
    expect(nearestName('a'.repeat(500), ['a'.repeat(501)])).toBeNull();
  });
});
