// A volume in the farm's unit with its word, singular or plural.
import { trimmedText } from '../quantity/show.ts';
import { UNIT_ML, type VolumeUnit } from '../quantity/units.ts';
import { say, type Words } from '../words/words.ts';

/** Such as `78.5 cups`: two decimals at most, the word from `barn.unit` of the language's words. */
export function volumeWords(words: Words, volume_mL: number, unit: VolumeUnit): string {
  const n = volume_mL / UNIT_ML[unit].valueOf();
  return `${trimmedText(n, words.lang)} ${say(words, `barn.unit.${unit}`, { n: Number(n.toFixed(2)) })}`;
}
