// Closes what a touch could open besides the board: menus, dropped files, zoom, dragged pictures.

/** Stops what leads away from the page or changes how it is shown. Keys go on working. */
export function lockBoard(page: Document): void {
  const stop = (event: Event) => event.preventDefault();
  for (const kind of ['contextmenu', 'dragstart', 'dragover', 'drop', 'selectstart', 'gesturestart'])
    page.addEventListener(kind, stop);
  page.addEventListener('wheel', (event) => event.ctrlKey && event.preventDefault(), { passive: false });
}
