// The fill of each phase: told apart by hatch, so that a copier keeps them apart too.
import type { Phase } from '../../../shared/herd/expected.ts';

/** The fill of a phase in a drawing that carries `PhaseHatches` with the same id. */
export function phaseFill(phase: Exclude<Phase, 'none'>, id: string): string {
  if (phase === 'with kids') return `url(#dots-${id})`;
  if (phase === 'nights apart') return `url(#stripes-${id})`;
  return phase === 'dry' ? 'var(--umber, #7b4a27)' : 'var(--milk, #fffdf6)';
}
