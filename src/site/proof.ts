// What the proof pages are made of.
import { openProofs } from '../../shared/proof/openProofs.ts';
import type { ProofInput } from '../../shared/proof/types.ts';
import { openSite } from './site.ts';

const opened = new Map<string, ProofInput>();

/** The input of every proof in a language. */
export function proofInput(lang: string): ProofInput {
  const { farm, book, ledger, figures } = openSite();
  let input = opened.get(lang);
  if (!input) opened.set(lang, (input = openProofs({ lang, units: farm.units, book, ledger, figures })));
  return input;
}

/** Ids of all figures, in the order of the file. */
export function figureIds(): string[] {
  return Object.keys(openSite().figures.figures);
}

/** The key of a figure's words. */
export function kindKey(kind: string): string {
  return `proof.kind.${kind.replaceAll('.', '-')}`;
}
