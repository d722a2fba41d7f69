// Questions to an open page; each runs in the browser, stands alone, and answers with lines of what is wrong.

/** Links and buttons that are too small to touch. */
export function smallTargets(least_px: number): string[] {
  const targets = document.querySelectorAll<HTMLElement>(
    'a[href], button, summary, input, select, [role="button"]',
  );
  return [...targets].flatMap((one) => {
    const { width, height } = one.getBoundingClientRect();
    if (!one.checkVisibility()) return [];
    const fits = Math.round(width) >= least_px && Math.round(height) >= least_px;
    return fits
      ? []
      : [`"${one.textContent?.trim().slice(0, 30)}" ${Math.round(width)} x ${Math.round(height)}`];
  });
}

/** Text that is too small to read from a step away. Text in a drawing is scaled with it. */
export function smallText(least_px: number): string[] {
  const found: string[] = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const holder = node.parentElement;
    const text = node.textContent?.trim() ?? '';
    if (!holder || text === '' || holder.closest('script, style, title, desc, noscript')) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    const box = range.getBoundingClientRect();
    // What is there for screen readers alone takes no room on the screen.
    if (box.width <= 1 || box.height <= 1 || !holder.checkVisibility({ visibilityProperty: true })) continue;
    const drawn = holder.closest('svg') && holder instanceof SVGGraphicsElement;
    const scale = drawn ? Math.abs(holder.getScreenCTM()?.d ?? 1) : 1;
    const size_px = Number.parseFloat(getComputedStyle(holder).fontSize) * scale;
    // A tenth of a pixel is no difference that an eye could see.
    if (size_px < least_px - 0.1) found.push(`"${text.slice(0, 30)}" ${size_px.toFixed(1)} px`);
  }
  return found;
}

/** How far the page scrolls sideways, if it does. */
export function sidewaysScroll(): string[] {
  const over_px = document.documentElement.scrollWidth - window.innerWidth;
  return over_px > 0 ? [`scrolls ${over_px} px sideways at ${window.innerWidth} px`] : [];
}

/** Elements that hide a part of their own text. */
export function cutText(): string[] {
  return [...document.querySelectorAll<HTMLElement>('body *')].flatMap((one) => {
    if (one.closest('svg') || one.clientWidth <= 2) return [];
    // A drawing may be cropped; its name is not text that is seen.
    const own = one.cloneNode(true) as HTMLElement;
    for (const drawing of own.querySelectorAll('svg')) drawing.remove();
    if (!own.textContent.trim()) return [];
    const { overflowX, overflowY } = getComputedStyle(one);
    const hides = (overflow: string) => /hidden|clip/.test(overflow);
    const isCut =
      (hides(overflowX) && one.scrollWidth > one.clientWidth + 1) ||
      (hides(overflowY) && one.scrollHeight > one.clientHeight + 1);
    return isCut ? [`"${one.textContent.trim().slice(0, 30)}" is cut off`] : [];
  });
}

/** Links to anywhere but the board, and a page without any link. */
export function waysOut(basePath: string): string[] {
  const links = [...document.querySelectorAll('a')];
  if (links.length === 0) return ['has no way on'];
  return links.flatMap(({ href, origin, pathname }) => {
    const inside = origin === location.origin && pathname.startsWith(basePath);
    return inside && /^(es\/)?barn\//.test(pathname.slice(basePath.length)) ? [] : [href];
  });
}

/** Text whose colour stands too near to what is painted below its middle. */
export function faintText(least: number): string[] {
  // A sheet of this kind is let in where a policy of content keeps inline styles out.
  const sheet = new CSSStyleSheet();
  sheet.replaceSync('* { pointer-events: auto !important; }');
  document.adoptedStyleSheets.push(sheet);
  const channels = (colour: string) => (colour.match(/[\d.]+/g) ?? []).map(Number);
  const light = (colour: string) => {
    const [r = 0, g = 0, b = 0] = channels(colour).map((part) => {
      const share = part / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const isSolid = (colour: string) => /^rgb/.test(colour) && (channels(colour)[3] ?? 1) === 1;
  // A block may be painted by a shape, by the element itself, or by its ::before laid below its text.
  const painted = (one: Element): string | null => {
    const before = getComputedStyle(one, '::before');
    if (before.content !== 'none' && before.position === 'absolute' && isSolid(before.backgroundColor))
      return before.backgroundColor;
    const style = getComputedStyle(one);
    const colour = one instanceof SVGGeometryElement ? style.fill : style.backgroundColor;
    return isSolid(colour) ? colour : null;
  };
  const found = [...document.querySelectorAll<HTMLElement>('body *')].flatMap((one) => {
    const own = [...one.childNodes].find(
      (node) => node.nodeType === Node.TEXT_NODE && node.textContent?.trim(),
    );
    if (!own || one.closest('svg') || !one.checkVisibility() || one.getBoundingClientRect().width <= 1)
      return [];
    one.scrollIntoView({ block: 'center' });
    const range = document.createRange();
    range.selectNodeContents(own);
    const box = range.getBoundingClientRect();
    const stack = document.elementsFromPoint(box.x + box.width / 2, box.y + box.height / 2);
    const below = stack
      .slice(Math.max(0, stack.indexOf(one)))
      .map(painted)
      .find((colour) => colour !== null);
    const [a, b] = [light(getComputedStyle(one).color), light(below ?? 'rgb(255, 255, 255)')];
    const contrast = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    return contrast < least ? [`"${one.textContent?.trim().slice(0, 30)}" ${contrast.toFixed(1)}`] : [];
  });
  document.adoptedStyleSheets.pop();
  return found;
}
