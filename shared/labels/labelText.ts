// What stands on a jar's label, line by line, in the words of a language.
import { isoDate } from '../calendar/day.ts';
import type { MilkingTime, UnitSystem } from '../herd/types.ts';
import { FRIDGE_C, useBy } from '../milk/keeping.ts';
import { dateText, inParts, mixedText, trimmedText } from '../quantity/show.ts';
import { say, type Words } from '../words/words.ts';
import type { LabelLine } from './fitLabel.ts';
import type { Jar } from './jars.ts';

/** What a label says beside its jar. */
export interface LabelSetting {
  readonly words: Words;
  readonly farm: string;
  readonly units: UnitSystem;
  /** Day number of the milking. */
  readonly day: number;
  readonly milking: MilkingTime;
  /** Day number on which the milk was pasteurized; null for raw milk. */
  readonly pasteurized: number | null;
  /** First day, a day number, whose milk of this doe may be kept again; null where nobody has set one. */
  readonly keptAgain: number | null;
}

/** An amount of milk as a label tells it: quarters of a cup, or litres to two decimals; the least there is where it is less. */
export function jarAmount(volume_mL: number, units: UnitSystem, words: Words): string {
  if (units === 'metric') {
    const litres = Math.max(0.01, volume_mL / 1000);
    return say(words, 'labels.amount.L', { amount: trimmedText(litres, words.lang) });
  }
  const quarters = Math.max(1, inParts(volume_mL, 'cup', 4));
  // A part of a cup is told like one.
  const n = quarters <= 4 ? 1 : quarters / 4;
  return say(words, 'labels.amount.cup', { n, amount: mixedText(quarters, 4, words.lang) });
}

/** Whose milk it is, as the label's name. */
export function jarName({ of, names }: Pick<Jar, 'of' | 'names'>, words: Words): string {
  if (of === 'mix') return say(words, 'labels.mix', { n: names.length });
  return names[0] ?? '';
}

/**
 * The last day to use or pasteurize a jar: the keeping rule at 40 °F, the farm's own rule and the health department go
 * first. Null for milk that nobody drinks.
 */
export function lastDay(
  use: Jar['use'],
  { day, pasteurized }: Pick<LabelSetting, 'day' | 'pasteurized'>,
): number | null {
  if (use !== 'kept') return null;
  const rule =
    pasteurized === null
      ? useBy('raw milk', day, FRIDGE_C)
      : useBy('pasteurized milk', pasteurized, FRIDGE_C);
  return rule.ok ? rule.day : null;
}

const text = (day: number, lang: string) => dateText(isoDate(day), lang, 'day');

/** The lines of a jar's label, the most important first where somebody could drink what must not be drunk. */
export function labelLines(jar: Jar, setting: LabelSetting): LabelLine[] {
  const { words, farm } = setting;
  const { lang } = words;
  const name: LabelLine = { role: 'name', text: jarName(jar, words), face: 'bold', scale: 1.45 };
  const when = say(words, `labels.when.${setting.milking}`, { date: text(setting.day, lang) });
  const amount = jarAmount(jar.volume_mL, setting.units, words);
  const many = say(words, 'labels.nth', { nth: jar.nth, n: jar.count });
  const measured = jar.count > 1 ? `${amount} · ${many}` : amount;
  const plain = (role: LabelLine['role'], line: string, scale = 1): LabelLine => ({ role, text: line, face: 'plain', scale }); // prettier-ignore
  const bold = (role: LabelLine['role'], line: string, scale = 1): LabelLine => ({ role, text: line, face: 'bold', scale }); // prettier-ignore
  if (jar.use !== 'kept') {
    const isWithheld = jar.use === 'withheld';
    const until =
      setting.keptAgain === null
        ? say(words, 'labels.withheld.ask')
        : say(words, 'labels.withheld.again', { date: text(setting.keptAgain, lang) });
    return [
      { role: 'withheld', text: say(words, `labels.${jar.use}.title`), face: 'slab', scale: 2 },
      bold('care', say(words, `labels.${jar.use}.care`), 1.05),
      { ...name, scale: 1.2 },
      // Which jar of how many is of no use for milk that nobody drinks, and the warning needs the room.
      plain('when', `${when} · ${amount}`),
      ...(isWithheld ? [bold('by', until)] : []),
    ];
  }
  const last = lastDay(jar.use, setting);
  const by = last === null ? null : text(last, lang);
  const isRaw = setting.pasteurized === null;
  const state =
    setting.pasteurized === null
      ? say(words, 'labels.raw.care')
      : say(words, 'labels.pasteurized.on', { date: text(setting.pasteurized, lang) });
  return [
    name,
    bold('when', when, 1.1),
    plain('amount', measured),
    isRaw ? bold('care', state) : plain('care', state),
    ...(by === null ? [] : [bold('by', say(words, `labels.${isRaw ? 'raw' : 'pasteurized'}.by`, { date: by }), 1.1)]), // prettier-ignore
    // A mix names its does where there is room, so that it can be traced; else the farm is named.
    { role: 'farm', text: jar.of === 'mix' ? jar.names.join(', ') : farm, face: 'plain', scale: 0.72, optional: true }, // prettier-ignore
  ];
}

/** Why milk cannot be told as pasteurized on a day: before it was milked, or later than the rule lets raw milk wait. */
export function pasteurizedFault(milked: number, pasteurized: number): 'too early' | 'too late' | null {
  if (pasteurized < milked) return 'too early';
  const waits = useBy('raw milk', milked, FRIDGE_C);
  return waits.ok && pasteurized > waits.day ? 'too late' : null;
}
