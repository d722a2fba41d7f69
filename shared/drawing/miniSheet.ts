// The first page of a sheet seen from afar: its title, and for each task its number, its picture and its room to answer.

/** What a task looks like from afar. */
export interface MiniTask {
  /** Height on the page; only its share of the page counts. */
  readonly height_mm: number;
  /** Which picture it has (`Picture['is']`), or null. */
  readonly picture: string | null;
  /** Room for each answer (`Work['is']`), in order. */
  readonly works: readonly string[];
}

/** Two paths in a box of `width` by `height`: what is printed solid, and what is a line. */
export interface MiniSheet {
  readonly width: number;
  readonly height: number;
  readonly solid: string;
  readonly lines: string;
}

const WIDTH = 90;
const HEIGHT = 116;
const EDGE = 8;
const INDENT = 16;
const RIGHT = WIDTH - EDGE;
const TOP = 25;

type Look = 'dots' | 'bars' | 'jars' | 'axis' | 'plot' | 'dials' | 'table' | 'cards' | 'frame';

/** What stands for each kind of picture; one that is not listed is a frame. */
const LOOKS: Readonly<Record<string, Look>> = {
  cups: 'dots',
  'picture-graph': 'dots',
  'part-cups': 'dots',
  bars: 'bars',
  'block-graph': 'bars',
  jars: 'jars',
  jugs: 'jars',
  'number-line': 'axis',
  'dot-plot': 'axis',
  scatter: 'plot',
  grid: 'plot',
  curve: 'plot',
  'box-plots': 'axis',
  square: 'table',
  clocks: 'dials',
  dials: 'dials',
  wheel: 'dials',
  table: 'table',
  notes: 'table',
  tally: 'table',
  cards: 'cards',
  steps: 'cards',
  scenes: 'cards',
  picks: 'cards',
  faces: 'cards',
};

/** Draws the tasks of a page below a title, each as high as its share of the page. */
export function miniSheet(tasks: readonly MiniTask[]): MiniSheet {
  const solid = [rect(EDGE, 8, 46, 6)];
  const lines = [level(EDGE, 40, 19.5)];
  const whole = tasks.reduce((sum, { height_mm }) => sum + height_mm, 0);
  const room = HEIGHT - EDGE - TOP;
  let at = TOP;
  tasks.forEach((task) => {
    const height = (task.height_mm / Math.max(whole, 1)) * room;
    drawTask(task, at, at + height - 3, solid, lines);
    at += height;
  });
  return { width: WIDTH, height: HEIGHT, solid: solid.join(''), lines: lines.join('') };
}

function drawTask(task: MiniTask, top: number, bottom: number, solid: string[], lines: string[]): void {
  solid.push(rect(EDGE, top, 4.5, 4.5));
  lines.push(level(INDENT, RIGHT - 6, top + 2.2));
  const from = top + 6;
  const works = task.works.filter((work) => work !== 'picture').length;
  // The picture takes what the answers leave, and never less than a third.
  const left = Math.max(bottom - from, 0);
  const answers = task.picture === null ? left : Math.min(works * 8, left * 0.6);
  if (task.picture !== null) drawPicture(task.picture, from, bottom - answers - 2, solid, lines);
  const each = works > 0 ? answers / works : 0;
  task.works
    .filter((work) => work !== 'picture')
    .forEach((work, index) => drawWork(work, bottom - answers + index * each, each, lines));
}

function drawWork(work: string, top: number, height: number, lines: string[]): void {
  if (height < 2) return;
  if (work === 'drawing' || work === 'working') lines.push(frame(INDENT, top, RIGHT - INDENT, height - 1.5));
  else if (work === 'boxes') {
    lines.push(level(INDENT, 50, top + Math.min(height / 2, 3)));
    lines.push(frame(60, top, RIGHT - 60, Math.min(height - 1.5, 7)));
  } else
    for (let y = top + Math.min(height / 2, 3); y < top + height; y += 5) lines.push(level(INDENT, RIGHT, y));
}

function drawPicture(kind: string, top: number, bottom: number, solid: string[], lines: string[]): void {
  const height = bottom - top;
  const width = RIGHT - INDENT;
  if (height < 3) return;
  switch (LOOKS[kind] ?? 'frame') {
    case 'dots':
      for (let row = 0; row < Math.min(6, Math.max(1, Math.floor(height / 6))); row += 1)
        for (let place = 0; place < (row % 2 === 0 ? 9 : 6); place += 1)
          solid.push(rect(INDENT + place * 7, top + row * 6, 4, 4));
      return;
    case 'bars':
      lines.push(`M${short(INDENT)} ${short(top)}V${short(bottom)}H${short(RIGHT)}`);
      [0.9, 0.55, 0.75, 0.35].forEach((part, place) =>
        solid.push(rect(INDENT + 5 + place * 15, bottom - height * part, 9, height * part)),
      );
      return;
    case 'jars':
      for (let place = 0; place < 3; place += 1) {
        lines.push(frame(INDENT + 3 + place * 21, top, 14, height));
        if (place < 2) solid.push(rect(INDENT + 3 + place * 21, top + height * 0.4, 14, height * 0.6));
      }
      return;
    case 'axis':
      lines.push(level(INDENT, RIGHT, bottom - 1.5));
      for (let x = INDENT; x <= RIGHT; x += width / 8)
        lines.push(`M${short(x)} ${short(bottom - 3)}V${short(bottom)}`);
      return;
    case 'plot':
      lines.push(`M${short(INDENT)} ${short(top)}V${short(bottom)}H${short(RIGHT)}`);
      [0.3, 0.45, 0.4, 0.62, 0.58, 0.8, 0.7].forEach((part, place) =>
        solid.push(rect(INDENT + 5 + place * 8.6, bottom - height * part, 2.6, 2.6)),
      );
      return;
    case 'dials':
      for (let place = 0; place < 2; place += 1) {
        const r = Math.min(height / 2, 10);
        const x = INDENT + 14 + place * 30;
        const y = top + height / 2;
        lines.push(`M${short(x - r)} ${short(y)}a${short(r)} ${short(r)} 0 1 0 ${short(2 * r)} 0a${short(r)} ${short(r)} 0 1 0 ${short(-2 * r)} 0`); // prettier-ignore
        lines.push(`M${short(x)} ${short(y - r * 0.7)}V${short(y)}H${short(x + r * 0.5)}`);
      }
      return;
    case 'table':
      for (let y = top; y <= bottom + 0.1; y += Math.max(height / 4, 4)) lines.push(level(INDENT, RIGHT, y));
      lines.push(`M${short(INDENT + width * 0.4)} ${short(top)}V${short(bottom)}`);
      return;
    case 'cards':
      for (let place = 0; place < 4; place += 1)
        lines.push(frame(INDENT + place * 16.5, top, 13, Math.min(height, 18)));
      return;
    case 'frame':
      lines.push(frame(INDENT, top, width, height));
  }
}

const short = (value: number): string => `${Math.round(value * 10) / 10}`;
const rect = (x: number, y: number, w: number, h: number): string =>
  `M${short(x)} ${short(y)}h${short(w)}v${short(h)}h${short(-w)}z`;
const frame = rect;
const level = (from: number, to: number, y: number): string => `M${short(from)} ${short(y)}H${short(to)}`;
