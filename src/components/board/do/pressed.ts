// Shows that a block was tapped before anything else is done: drawing a whole scene anew takes a slow machine a while.

const PRESSED = 'pressed';

/**
 * Holds back each tap on a button below `target` until the screen has shown the button pressed, then lets the page
 * have it. A second tap on the same button meanwhile is dropped, so that an eager finger does not choose twice; one
 * on another button comes after the first, as it was tapped.
 */
export function showPressed(target: HTMLElement): void {
  const view = target.ownerDocument.defaultView;
  if (!view) return;
  let held: HTMLElement | null = null;
  const give = () => {
    const button = held;
    held = null;
    button?.classList.remove(PRESSED);
    button?.click();
  };
  const hold = (event: MouseEvent) => {
    const button = (event.target as Element).closest<HTMLElement>('button');
    // The page's own click, made below, is the one that counts.
    if (!button || !event.isTrusted) return;
    event.stopImmediatePropagation();
    if (held === button) return;
    give();
    held = button;
    button.classList.add(PRESSED);
    // A frame is painted after its callbacks: what is queued there runs when the press can be seen.
    view.requestAnimationFrame(() =>
      view.setTimeout(() => {
        if (held === button) give();
      }),
    );
  };
  target.addEventListener('click', hold, { capture: true });
}
