// Which pages an order prints, and what their files are called.
import type { UnitSystem } from '../../shared/herd/types.ts';
import type { Paper, PrintOptions } from './options.ts';

/** A page of the site and the PDF that it becomes. */
export interface PrintJob {
  /** Below the site's base path, without a slash before it: `es/sheets/3-5/?paper=a4`. */
  readonly address: string;
  readonly file: string;
}

/** The paper that schools near a farm use, told by its units. */
function paperOf(units: UnitSystem): Paper {
  return units === 'us' ? 'letter' : 'a4';
}

/**
 * The sheets of an order, language by language. `first` is the language that stands at the site's
 * root.
 */
export function sheetJobs(options: PrintOptions, units: UnitSystem, first: string): PrintJob[] {
  const paper = options.paper ?? paperOf(units);
  const query = new URLSearchParams({ ...(options.seed === null ? {} : { seed: options.seed }), paper });
  return options.langs.flatMap((lang) =>
    options.bands.map((band) => ({
      address: `${lang === first ? '' : `${lang}/`}sheets/${band}/?${query}`,
      file: ['sheet', band, lang, paper, ...(options.seed === null ? [] : [options.seed])].join('-') + '.pdf',
    })),
  );
}
