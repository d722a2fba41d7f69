// The note of the strip cup: put together, taken apart, and nothing of a person's own words lost.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FINDINGS, HALVES, LONGEST_NOTE, NO_NOTE, noteText, readNote, type NoteWords } from '../../../shared/book/stripNote.ts'; // prettier-ignore

const words: NoteWords = {
  title: 'Strip cup',
  findings: { clots: 'clots', watery: 'watery', blood: 'blood', colour: 'odd color', hard: 'hard half', hot: 'hot half', sore: 'it hurts her', unwell: 'does not eat' },
  halves: { left: 'left half', right: 'right half' },
}; // prettier-ignore

describe('noteText', () => {
  it('says what was found, in which half, and what was written by hand', () => {
    const note = { findings: ['blood', 'clots'], halves: ['left'], free: ' since  Sunday\n' } as const;
    expect(noteText(note, words)).toBe('Strip cup: clots, blood, left half; since Sunday');
    expect(noteText({ ...NO_NOTE, free: 'kicked the pail' }, words)).toBe('kicked the pail');
    expect(noteText(NO_NOTE, words)).toBe('');
  });

  it('is one line of at most 200 characters, with every sign of the strip cup in it', () => {
    fc.assert(
      fc.property(
        fc.subarray([...FINDINGS]),
        fc.subarray([...HALVES]),
        fc.string({ maxLength: 400 }),
        (findings, halves, free) => {
          const text = noteText({ findings, halves, free }, words);
          expect([...text].length).toBeLessThanOrEqual(LONGEST_NOTE);
          expect(text).not.toMatch(/[\n\r]/);
          for (const one of findings) expect(text).toContain(words.findings[one]);
        },
      ),
    );
  });
});

describe('readNote', () => {
  it('takes apart what was put together', () => {
    const free = fc.constantFrom('', 'since Sunday', 'one; two', 'a, b');
    fc.assert(
      fc.property(
        fc.subarray([...FINDINGS], { minLength: 1 }),
        fc.subarray([...HALVES]),
        free,
        (findings, halves, by) => {
          const note = { findings, halves, free: by };
          expect(readNote(noteText(note, words), words)).toEqual(note);
        },
      ),
    );
  });

  it.each(['off her feed', 'Strip cup: grumos', 'Strip cup: clots, purple', 'Despunte: grumos', ''])(
    'leaves "%s" as it was written',
    (text) => {
      expect(readNote(text, words)).toEqual({ ...NO_NOTE, free: text });
      expect(noteText(readNote(text, words), words)).toBe(text);
    },
  );
});
