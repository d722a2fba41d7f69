// The port that a start is asked for.
import { describe, expect, it } from 'vitest';
import { portOf, USUAL_PORT } from '../../../src/desk/port.ts';

describe('portOf', () => {
  it('is the usual one where nothing is asked', () => {
    expect([portOf(undefined), portOf('')]).toEqual([USUAL_PORT, USUAL_PORT]);
  });

  it('takes a port number', () => {
    expect([portOf('8080'), portOf('0'), portOf('65535')]).toEqual([8080, 0, 65535]);
  });

  it.each(['barn', '-1', '65536', '80.5', ' 80'])('says what a port is of %j', (text) => {
    expect(() => portOf(text)).toThrow('a whole number from 0 to 65535');
  });
});
