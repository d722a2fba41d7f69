// Drawings that come again and again in a document: each is drawn once and then referred to by its name.
import { doeLook, type DoeLook } from '../drawing/doeLook.ts';
import { seedOf } from '../drawing/wobble.ts';
import type { Face } from './picture.ts';
import type { Sheet } from './sheet.ts';

/** Whether a doe is awake, or rests. */
export type Mood = 'awake' | 'resting';

/** A face that a document holds once. */
export interface FaceSymbol {
  readonly id: string;
  readonly look: DoeLook;
  readonly mood: Mood;
}

/** Names of the drawings that every document of sheets holds. */
export const SYMBOLS = Object.freeze({ cup: 'drawn-cup', jar: 'drawn-jar', emptyJar: 'drawn-empty-jar' });

/** The name of a doe's face. */
export function faceId({ breed, id }: Face, mood: Mood = 'awake'): string {
  return `face-${seedOf(`${breed}|${id}`).toString(36)}${mood === 'resting' ? '-resting' : ''}`;
}

/** Every face of some sheets, each once: those in their heads, and those in their pictures. */
export function faceSymbols(sheets: readonly Sheet[], heads: readonly Face[]): FaceSymbol[] {
  const moods = new Set(sheets.map(({ state }): Mood => (state === 'resting' ? 'resting' : 'awake')));
  const found = new Map<string, FaceSymbol>();
  const add = (face: Face, mood: Mood): void => {
    const id = faceId(face, mood);
    if (!found.has(id)) found.set(id, { id, look: doeLook(face.breed, face.id), mood });
  };
  for (const face of heads.slice(0, HEAD_FACES)) for (const mood of moods) add(face, mood);
  for (const sheet of sheets) for (const face of facesIn(sheet.tasks)) add(face, 'awake');
  return [...found.values()];
}

/** How many faces stand in the head of a sheet. */
export const HEAD_FACES = 2;

/** Faces anywhere in a value: whatever stands under the name `face`. */
function facesIn(value: unknown): Face[] {
  if (Array.isArray(value)) return value.flatMap(facesIn);
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, part]) =>
    name === 'face' && part !== null ? [part as Face] : facesIn(part),
  );
}
