// The amounts of a lesson's materials follow the number of children, which the address keeps for a link to share.
import { materialsFor } from '../../../shared/lesson/materials.ts';
import type { Material } from '../../../shared/lesson/types.ts';

/** Sizes of a class: what is shown at first, and what can be typed in. */
export const CLASS_SIZE = { usual: 24, least: 10, most: 60 } as const;

/** A class size as typed, or null for what is none. */
export function classSizeIn(text: string): number | null {
  const size = /^\s*\d{1,3}\s*$/.test(text) ? Number(text) : NaN;
  return size >= CLASS_SIZE.least && size <= CLASS_SIZE.most ? size : null;
}

/** Shows the field, takes the size from the address (`?class=30`) and fills in the amounts whenever it changes. */
export function followClassSize(page: Document): void {
  const asking = page.querySelector<HTMLElement>('.class-size');
  const field = asking?.querySelector<HTMLInputElement>('input');
  const carried = page.querySelector('#materials')?.textContent;
  if (!asking || !field || !carried) return;
  const materials = JSON.parse(carried) as Material[];
  const cells = page.querySelectorAll('.materials [data-amount]');
  const caption = page.querySelector<HTMLElement>('.materials caption');
  const view = page.defaultView as Window;
  const fill = (size: number) => {
    materialsFor(materials, size).forEach(({ count }, row) => {
      const cell = cells[row];
      if (cell) cell.textContent = String(count);
    });
    if (caption) caption.textContent = (caption.dataset['told'] ?? '').replace('{n}', String(size));
  };
  const asked = classSizeIn(new URLSearchParams(view.location.search).get('class') ?? '');
  if (asked !== null) {
    field.value = String(asked);
    fill(asked);
  }
  field.addEventListener('input', () => {
    const size = classSizeIn(field.value);
    field.setAttribute('aria-invalid', String(size === null));
    if (size === null) return;
    fill(size);
    const address = new URL(view.location.href);
    address.searchParams.set('class', String(size));
    view.history.replaceState(null, '', address);
  });
  asking.hidden = false;
}
