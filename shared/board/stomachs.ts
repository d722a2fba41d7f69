// Four stomachs? One stomach with four chambers.
import type { Answer, BoardInput } from './types.ts';

/** Chambers of a goat's stomach. Source: Cornell University, 4-H dairy goat pages. */
export const CHAMBER_COUNT = 4;

/** What a full-size doe's rumen holds, L. Source: goat keeping pages, which disagree (from memory). */
export const RUMEN_L = Object.freeze({ low: 12, high: 25 });

/** One stomach a doe; over the herd, as many stomachs as does and four times as many chambers. */
export function stomachs(input: BoardInput): Answer {
  const does = input.does.length;
  const chambers = does * CHAMBER_COUNT;
  return {
    name: 'stomachs',
    missing: false,
    live: false,
    face: null,
    number: '1',
    slots: { n: 1, does, chambers, ...RUMEN_L },
    variants: {},
    concrete: does,
    picture: { kind: 'food', food: { kind: 'stomach' } },
    proof: {
      figure: null,
      steps: [
        { label: '', key: 'stomachs.chambers', sum: `1 + 1 + 1 + 1 = ${CHAMBER_COUNT}` },
        { label: '', key: 'stomachs.herd', sum: `${does} × 1 = ${does}` },
        { label: '', key: 'stomachs.herdChambers', sum: `${does} × ${CHAMBER_COUNT} = ${chambers}` },
      ],
      columns: [],
      rows: [],
      missing: 0,
      facts: ['one-stomach', 'four-chambers-work', 'rumen-holds', 'rumen-beats', 'cud-hours'],
      table: null,
    },
  };
}
