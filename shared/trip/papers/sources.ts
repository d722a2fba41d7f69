// What the facts on each paper rest on, for the small print at its foot.
import type { PaperName, TripCase } from './types.ts';
import { hasSlot, meetsAnimals } from './applies.ts';

/** A source that a foot may name; its full name stands under `trip-papers.source`. */
export type SourceName =
  'compendium' | 'wash' | 'q-fever' | 'raw' | 'hse' | 'thunder' | 'allergy' | 'practice';

/** The sources of one paper of a visit, only those that something on it rests on. */
export function sourcesOf(paper: PaperName, trip: TripCase): SourceName[] {
  const { wish, ground } = trip;
  const animals = meetsAnimals(trip);
  const care: SourceName[] = animals ? ['compendium'] : [];
  const speaksOfBirths =
    wish.needs.some((need) => need === 'pregnant' || need === 'immune') || ground.kiddingNear;
  const births: SourceName[] = speaksOfBirths ? ['q-fever'] : [];
  const allergy: SourceName[] = wish.needs.includes('milk-allergy') ? ['allergy'] : [];
  switch (paper) {
    case 'teacher':
      return [...care, 'wash', ...births, 'raw', 'hse', ...allergy, 'thunder', 'practice'];
    case 'home':
      return ['compendium', 'q-fever', 'raw', 'hse'];
    case 'leaders':
      return [];
    case 'timetable':
      return hasSlot(trip, 'wash') ? ['wash'] : [];
    case 'rain':
      return ['practice', 'thunder'];
    case 'stations':
      return animals && ground.kiddingNear ? [...care, 'q-fever'] : care;
    case 'hygiene':
      return ['compendium', 'wash', 'hse'];
    case 'emergency':
      return ['thunder', ...care];
  }
}
