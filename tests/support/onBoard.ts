// Questions to an open page of the Barn board; each runs in the browser, stands alone, and answers with lines of what is wrong.

/** What may be touched on the board: least side and distance in px, and the strip at the lowest edge that stays free. */
export interface Touch {
  readonly side_px: number;
  readonly apart_px: number;
  readonly rest_px: number;
}

/**
 * Targets that are too small, too near to each other, or in the strip where wrists rest. What the stage hides is cut
 * off it: only what can be touched counts.
 */
export function touchFaults({ side_px, apart_px, rest_px }: Touch): string[] {
  const SLACK_px = 0.75;
  const stage = document.querySelector('.stage');
  const clip = stage?.getBoundingClientRect();
  const targets = [
    ...document.querySelectorAll<HTMLElement>('a[href], button, summary, input, select, [role="button"]'),
  ].filter((one) => one.checkVisibility({ visibilityProperty: true }) && !one.closest('.still-there'));
  const nameOf = (one: HTMLElement) =>
    `"${(one.getAttribute('aria-label') ?? one.textContent).trim().replace(/\s+/g, ' ').slice(0, 30)}"`;
  const boxes = targets.map((one) => {
    const box = one.getBoundingClientRect();
    const isCut = clip !== undefined && stage?.contains(one) === true;
    const top = isCut ? Math.max(box.top, clip.top) : box.top;
    const bottom = isCut ? Math.min(box.bottom, clip.bottom) : box.bottom;
    return { one, left: box.left, right: box.right, top, bottom, full: box.height };
  });
  const small = boxes
    .filter(({ left, right, full }) => right - left < side_px - SLACK_px || full < side_px - SLACK_px)
    .map(
      ({ one, left, right, full }) =>
        `small: ${nameOf(one)} ${(right - left).toFixed(0)} x ${full.toFixed(0)}`,
    );
  const seen = boxes.filter(({ top, bottom }) => bottom - top > 1);
  const low = seen
    .filter(({ bottom }) => bottom > window.innerHeight - rest_px + SLACK_px)
    .map(
      ({ one, bottom }) =>
        `low: ${nameOf(one)} ${(window.innerHeight - bottom).toFixed(0)} px above the edge`,
    );
  const near = seen.flatMap((a, place) =>
    seen.slice(place + 1).flatMap((b) => {
      if (a.one.contains(b.one) || b.one.contains(a.one)) return [];
      const across = Math.max(b.left - a.right, a.left - b.right);
      const down = Math.max(b.top - a.bottom, a.top - b.bottom);
      const apart = Math.max(across, down);
      return apart < apart_px - SLACK_px
        ? [`near: ${nameOf(a.one)} and ${nameOf(b.one)} ${apart.toFixed(0)} px`]
        : [];
    }),
  );
  return [...small, ...low, ...near];
}

/** How much of the stage lies below its lower edge, if any. */
export function beyondStage(): string[] {
  const stage = document.querySelector('.stage');
  if (!stage) return ['has no stage'];
  const over = stage.scrollHeight - stage.clientHeight;
  return over > 2 ? [`${over} px of ${stage.scrollHeight} lie below the stage`] : [];
}

/** Text of the page itself, drawings apart, that overlaps a target it does not belong to. */
export function coveredText(): string[] {
  const targets = [...document.querySelectorAll<HTMLElement>('a[href], button')].filter((one) =>
    one.checkVisibility(),
  );
  const texts = [...document.querySelectorAll<HTMLElement>('[data-read]')].filter(
    (one) => one.checkVisibility() && !one.closest('a, button'),
  );
  return texts.flatMap((text) => {
    const a = text.getBoundingClientRect();
    return targets.flatMap((target) => {
      if (target.closest('.band') || text.contains(target)) return [];
      const b = target.getBoundingClientRect();
      const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
      const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
      return across > 2 && down > 2
        ? [`"${text.textContent.trim().slice(0, 30)}" lies under "${target.textContent.trim().slice(0, 20)}"`]
        : [];
    });
  });
}

/** How far an answer's drawing reaches over the place that is left for it. */
export function beyondPicture(): string[] {
  // A letter's box is larger than the letter.
  const SLACK_px = 12;
  return [...document.querySelectorAll<HTMLElement>('.picture')].flatMap((place) => {
    const box = place.getBoundingClientRect();
    const over = [...place.querySelectorAll('svg, p, li, span, text')].flatMap((one) => {
      const part = one.getBoundingClientRect();
      if (!one.checkVisibility() || part.width <= 1) return [];
      const by = Math.max(
        box.top - part.top,
        part.bottom - box.bottom,
        box.left - part.left,
        part.right - box.right,
      );
      return by > SLACK_px ? [by] : [];
    });
    return over.length > 0 ? [`its drawing reaches ${Math.max(...over).toFixed(0)} px out of its place`] : [];
  });
}

/** What a touch could open besides the board, or a page could listen with: fields to type in, other windows, frames, inline styles and scripts. */
export function openDoors(): string[] {
  const doors = document.querySelectorAll(
    'input:not([type="range"]), textarea, select, [contenteditable], iframe, object, embed, form, [target], [download], body [style], video, script:not([src]):not([type="application/json"])',
  );
  return [...doors].map((one) => one.outerHTML.slice(0, 60));
}
