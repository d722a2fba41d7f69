// Shows the button that prints a page, where a browser can.

/** Wakes the page's print button. */
export function offerPrint(page: Document): void {
  const button = page.querySelector<HTMLButtonElement>('button.print');
  if (!button) return;
  button.addEventListener('click', () => page.defaultView?.print());
  button.hidden = false;
}
