// Each thing that can be wrong in does.csv and kiddings.csv, and the words that the coordinator reads.
import { describe, expect, it } from 'vitest';
import { told } from './farmFolder.ts';

const does = (...rows: string[]) =>
  told({ 'does.csv': ['doe,name,breed,born,weight_kg', 'clover,,,,', ...rows, ''].join('\n'), 'kiddings.csv': 'doe,date\n' }); // prettier-ignore
const kiddings = (...rows: string[]) =>
  told({ 'kiddings.csv': ['doe,date,kids,apart,weaned,dry', ...rows, ''].join('\n') });

describe('does.csv', () => {
  it('a short name that cannot stand in a web address', () => {
    expect(does('Big Bell,Bell,,,')).toMatchInlineSnapshot(
      `"does.csv:3:1  found "Big Bell"; expected a short name of at most 60 letters, digits, hyphens (-) and underscores (_); nearest "Big-Bell"; do: write it without spaces and other signs: it becomes part of her page's web address; her full name goes under name"`,
    );
    expect(does('?,Bell,,,')).toMatchInlineSnapshot(
      `"does.csv:3:1  found "?"; expected a short name of at most 60 letters, digits, hyphens (-) and underscores (_); do: write it without spaces and other signs: it becomes part of her page's web address; her full name goes under name"`,
    );
    expect(does(',Bell,,,')).toMatchInlineSnapshot(
      `"does.csv:3:1  found an empty cell; expected a short name of at most 60 letters, digits, hyphens (-) and underscores (_); do: write it without spaces and other signs: it becomes part of her page's web address; her full name goes under name"`,
    );
    expect(does(`${'a'.repeat(61)},Bell,,,`)).toContain('at most 60 letters');
  });
  it('the same doe twice', () => {
    expect(does('bell,,,,', 'clover,,,,')).toMatchInlineSnapshot(
      `"does.csv:4:1  found "clover" a second time (the first is does.csv:2); expected one row for each doe; do: take one of the two rows out, or give one of the does another short name"`,
    );
  });
  it('a birth that is no date, or still to come', () => {
    expect(does('bell,,,2022,')).toMatchInlineSnapshot(
      `"does.csv:3:8  found "2022"; expected a date as YYYY-MM-DD, for instance 2026-05-21; do: write the year, the month and the day with a hyphen between them"`,
    );
    expect(does('bell,,,2026-06-02,')).toMatchInlineSnapshot(
      `"does.csv:3:8  found 2026-06-02; expected a date up to today, 2026-06-01; do: correct the date, or leave the cell empty"`,
    );
  });
  it('a weight that cannot be', () => {
    expect(does('bell,,,,140 lb')).toMatchInlineSnapshot(
      `"does.csv:3:9  found "140 lb"; expected her weight in kilograms, a number from 1 to 1500; do: write the number alone (1 lb is 0.454 kg), or leave the cell empty"`,
    );
    for (const text of ['0', '-50', '5000', '"62,5"'])
      expect(does(`bell,,,,${text}`)).toContain('in kilograms');
    expect(does('bell,,,,62 1/2')).toBe('ok');
    expect(told({ 'does.csv': 'doe;weight_kg\nclover;62,5\nbell;\n' })).toBe('ok');
  });
  it('a doe of a row with a fault is not unknown elsewhere', () => {
    expect(
      told({ 'does.csv': 'doe,name,breed,born,weight_kg\nclover,,,soon,\nbell,,,,\n' }),
    ).toMatchInlineSnapshot(
      `"does.csv:2:10  found "soon"; expected a date as YYYY-MM-DD, for instance 2026-05-21; do: write the year, the month and the day with a hyphen between them"`,
    );
  });
});

describe('kiddings.csv', () => {
  it('an unknown doe, a date that is missing, none or impossible', () => {
    expect(kiddings('clovr,2026-03-03,,,,')).toMatchInlineSnapshot(
      `"kiddings.csv:2:1  found "clovr"; expected the short name of a doe in does.csv; nearest "clover"; do: correct the name, or give her a row in does.csv"`,
    );
    expect(kiddings('clover,,2,,,')).toMatchInlineSnapshot(
      `"kiddings.csv:2:8  found an empty cell; expected the date of the kidding; do: write it as YYYY-MM-DD, or take the row out"`,
    );
    expect(kiddings('clover,2026-02-29,,,,')).toMatchInlineSnapshot(
      `"kiddings.csv:2:8  found "2026-02-29"; expected a day that exists: 2026-02 has 28 days; do: correct the day"`,
    );
    expect(kiddings('clover,2026-03-03,,03/24/2026,,')).toMatchInlineSnapshot(
      `"kiddings.csv:2:20  found "03/24/2026"; expected a date as YYYY-MM-DD, for instance 2026-05-21; nearest "2026-03-24"; do: write 2026-03-24; in a spreadsheet, give the whole column the date format YYYY-MM-DD before you save"`,
    );
  });
  it('days out of order', () => {
    expect(kiddings('clover,2026-03-03,2,2026-03-01,,')).toMatchInlineSnapshot(
      `"kiddings.csv:2:21  found 2026-03-01; expected a date on or after 2026-03-03, the day under date; do: correct one of the two dates"`,
    );
    expect(kiddings('clover,2026-03-03,2,2026-03-24,2026-03-20,')).toMatchInlineSnapshot(
      `"kiddings.csv:2:32  found 2026-03-20; expected a date on or after 2026-03-24, the day under apart; do: correct one of the two dates"`,
    );
    expect(kiddings('clover,2026-03-03,2,,2026-03-01,')).toMatchInlineSnapshot(
      `"kiddings.csv:2:22  found 2026-03-01; expected a date on or after 2026-03-03, the day under date; do: correct one of the two dates"`,
    );
    expect(kiddings('clover,2026-03-03,2,,,2026-03-02')).toMatchInlineSnapshot(
      `"kiddings.csv:2:23  found 2026-03-02; expected a date on or after 2026-03-03, the day under date; do: correct one of the two dates"`,
    );
    expect(kiddings('clover,2026-03-03,2,2026-03-03,2026-03-03,2026-03-03')).toBe('ok');
  });
  it('a number of kids that cannot be', () => {
    expect(kiddings('clover,2026-03-03,twins,,,')).toMatchInlineSnapshot(
      `"kiddings.csv:2:19  found "twins"; expected a whole number from 0 to 6; do: write how many kids were born, or leave the cell empty"`,
    );
    for (const text of ['7', '-1', '1.5'])
      expect(kiddings(`clover,2026-03-03,${text},,,`)).toContain('from 0 to 6');
    for (const text of ['0', '6', '']) expect(kiddings(`clover,2026-03-03,${text},,,`)).toBe('ok');
  });
  it('the same kidding twice', () => {
    expect(kiddings('clover,2026-03-03,2,,,', 'Clover,2026-03-03,1,,,')).toMatchInlineSnapshot(
      `"kiddings.csv:3:1  found clover on 2026-03-03 a second time (the first is kiddings.csv:2); expected one row for each kidding; do: take one of the two rows out; twins and more go under kids"`,
    );
  });
});
