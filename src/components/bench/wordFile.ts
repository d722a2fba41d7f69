// A lesson as a Word document: plain, in Word's own styles, to go on writing in.
import {
  BorderStyle,
  Document,
  Footer,
  HeadingLevel,
  LevelFormat,
  Packer,
  PageNumber,
  Paragraph,
  Table,
  TableCell,
  TableLayoutType,
  TableRow,
  TextRun,
  WidthType,
} from 'docx';
import { clockText, type Span } from '../../../shared/lesson/clock.ts';
import type { PlanHead } from '../../../shared/lesson/planHead.ts';
import { perText } from '../../../shared/lesson/planText.ts';
import type { PlannedStep } from '../../../shared/lesson/pool.ts';
import type { Block, Run } from '../../../shared/lesson/types.ts';
import type { Wish } from '../../../shared/lesson/wish.ts';
import { STANDARDS } from '../../../shared/tasks/standards.ts';
import { say, type Words } from '../../../shared/words/words.ts';
import type { BenchProps } from '../../../shared/lesson/benchProps.ts';

/** What stands in the document. */
export interface WordPlan {
  readonly title: string;
  readonly full: string;
  readonly steps: readonly PlannedStep[];
  readonly spans: readonly Span[];
  readonly wish: Wish;
  readonly head: PlanHead;
  readonly washMissing: boolean;
  readonly sheets: BenchProps['sheets'];
  readonly paper: BenchProps['paper'];
  readonly words: Words;
  readonly farm: string;
}

// Word measures in twentieths of a point: 1440 to the inch.
const TWIPS_PER_mm = 1440 / 25.4;
const PAPER_mm = { letter: { width: 215.9, height: 279.4 }, a4: { width: 210, height: 297 } };
const MARGIN_mm = 20;
const CLOCK_mm = 22;
const INK = '1E1912';
const NUMBERED = 'numbered';
const twips = (mm: number) => Math.round(mm * TWIPS_PER_mm);

/** The document as a file. */
export function wordFile(plan: WordPlan): Promise<Blob> {
  return Packer.toBlob(wordDocument(plan));
}

/** The document before it is packed. */
export function wordDocument(plan: WordPlan): Document {
  const { title, full, words, farm, paper } = plan;
  const { width, height } = PAPER_mm[paper];
  const margin = twips(MARGIN_mm);
  const page = {
    size: { width: twips(width), height: twips(height) },
    margin: { top: margin, right: margin, bottom: margin, left: margin },
  };
  return new Document({
    title,
    creator: farm,
    lastModifiedBy: farm,
    description: full,
    styles: { default: wordStyles(words.lang) },
    numbering: { config: [numbering()] },
    sections: [
      {
        properties: { page },
        footers: { default: footer(`${farm} · ${title}`) },
        children: [
          new Paragraph({ text: title, heading: HeadingLevel.TITLE }),
          new Paragraph({ text: farm }),
          new Paragraph({ text: full, spacing: { after: 160 } }),
          ...cautions(plan),
          ...materials(plan),
          ...list(words, 'bench.facts.aims', plan.head.aims),
          ...wordsToKnow(plan),
          heading(say(words, 'bench.steps.title')),
          stepTable(plan, twips(width - 2 * MARGIN_mm)),
          ...standards(plan),
        ],
      },
    ],
  });
}

/** Word's own styles in one face, in ink. */
function wordStyles(lang: string) {
  const run = { font: 'Arial', color: INK, bold: true };
  return {
    document: { run: { font: 'Arial', size: 22, language: { value: lang } } },
    title: { run: { ...run, size: 40 } },
    heading1: { run: { ...run, size: 28 } },
    heading2: { run: { ...run, size: 23 } },
  };
}

function numbering() {
  const indent = { left: twips(8), hanging: twips(6) };
  return {
    reference: NUMBERED,
    levels: [{ level: 0, format: LevelFormat.DECIMAL, text: '%1.', style: { paragraph: { indent } } }],
  };
}

function footer(text: string): Footer {
  const page = new TextRun({
    children: ['   ', PageNumber.CURRENT, ' / ', PageNumber.TOTAL_PAGES],
    size: 16,
  });
  return new Footer({ children: [new Paragraph({ children: [new TextRun({ text, size: 16 }), page] })] });
}

const heading = (text: string) =>
  new Paragraph({
    text,
    heading: HeadingLevel.HEADING_1,
    keepNext: true,
    spacing: { before: 240, after: 80 },
  });
const bullet = (text: string, keepNext = false) => new Paragraph({ text, bullet: { level: 0 }, keepNext });
const small = (text: string, keepNext: boolean) =>
  new Paragraph({ children: [new TextRun({ text, size: 17 })], spacing: { before: 60 }, keepNext });

function list(words: Words, key: string, lines: readonly string[]): Paragraph[] {
  return lines.length === 0 ? [] : [heading(say(words, key)), ...lines.map((line) => bullet(line))];
}

function cautions({ head, washMissing, words }: WordPlan): Paragraph[] {
  if (head.cautions.length === 0) return [];
  const lines = head.cautions.map((one) => say(words, `lesson.caution.${one}`));
  const missing = washMissing ? [say(words, 'bench.facts.wash-missing')] : [];
  return [
    ...list(words, 'bench.facts.cautions', [...missing, ...lines]),
    new Paragraph({ text: say(words, 'lesson.cautions-more'), spacing: { before: 60 } }),
  ];
}

function materials({ head, wish, words }: WordPlan): Paragraph[] {
  const title = heading(say(words, 'bench.facts.materials', { n: wish.children }));
  if (head.needed.length === 0) return [title, new Paragraph(say(words, 'bench.facts.no-materials'))];
  const lines = head.needed.map(
    ({ material, count }) => `${count} × ${material.what} (${perText(words, material)})`,
  );
  return [title, ...lines.map((line) => bullet(line))];
}

function wordsToKnow({ head, words }: WordPlan): Paragraph[] {
  if (head.words.length === 0) return [];
  const lines = head.words.map(({ word, means }) => {
    const children = [new TextRun({ text: word, bold: true }), new TextRun(`: ${means}`)];
    return new Paragraph({ children, bullet: { level: 0 } });
  });
  return [heading(say(words, 'bench.facts.words')), ...lines];
}

function stepTable({ steps, spans, sheets, words }: WordPlan, width: number): Table {
  const clock = twips(CLOCK_mm);
  const head = ['bench.paper.clock', 'bench.paper.step'].map((key, index) => {
    const children = [new Paragraph({ children: [new TextRun({ text: say(words, key), bold: true })] })];
    return cell(children, index === 0 ? clock : width - clock);
  });
  // A list that begins in another step begins at one again.
  let lists = 0;
  const rows = steps.map(({ step, minutes }, index) => {
    const sheet = step.sheet === null ? undefined : sheets[step.sheet];
    const facts = [say(words, `lesson.kind.${step.kind}`)];
    if (sheet) facts.push(say(words, 'bench.steps.sheet', { title: sheet.title }));
    const text = step.blocks.flatMap((block) => blockText(block, words, () => (lists += 1)));
    return new TableRow({
      cantSplit: true,
      children: [
        cell([plain(clockText(spans[index]?.from ?? 0), true), plain(`${minutes} min`)], clock),
        cell(
          [
            new Paragraph({
              text: `${index + 1}. ${step.title}`,
              heading: HeadingLevel.HEADING_2,
              keepNext: true,
            }),
            new Paragraph({ children: [new TextRun({ text: facts.join(' · '), italics: true })], spacing: { after: 80 } }), // prettier-ignore
            ...text,
          ],
          width - clock,
        ),
      ],
    });
  });
  const end = new TableRow({
    children: [
      cell([plain(clockText(spans.at(-1)?.to ?? 0), true)], clock),
      cell([plain('')], width - clock),
    ],
  });
  return new Table({
    layout: TableLayoutType.FIXED,
    width: { size: width, type: WidthType.DXA },
    columnWidths: [clock, width - clock],
    rows: [new TableRow({ tableHeader: true, children: head }), ...rows, end],
  });
}

function cell(children: readonly Paragraph[], width: number): TableCell {
  const line = { style: BorderStyle.SINGLE, size: 6, color: INK };
  return new TableCell({
    children: [...children],
    width: { size: width, type: WidthType.DXA },
    margins: { top: 60, bottom: 60, left: 100, right: 100 },
    borders: { top: line, bottom: line, left: line, right: line },
  });
}

const plain = (text: string, bold = false) => new Paragraph({ children: [new TextRun({ text, bold })] });

function blockText(block: Block, words: Words, nextList: () => number): Paragraph[] {
  if (block.is === 'list') {
    const instance = block.ordered ? nextList() : 0;
    return block.lines.map((runs) => {
      const children = runs.map((run) => textRun(run));
      return block.ordered
        ? new Paragraph({ children, numbering: { reference: NUMBERED, level: 0, instance } })
        : new Paragraph({ children, bullet: { level: 0 } });
    });
  }
  if (block.is === 'paragraph')
    return [new Paragraph({ children: block.runs.map((run) => textRun(run)), spacing: { after: 80 } })];
  const label = new TextRun({ text: `${say(words, 'bench.steps.note')}: `, bold: true, size: 20 });
  const children = [label, ...block.runs.map((run) => textRun(run, 20))];
  const border = { left: { style: BorderStyle.SINGLE, size: 18, space: 8, color: '8F1F14' } };
  return [
    new Paragraph({ children, border, indent: { left: twips(4) }, spacing: { before: 60, after: 80 } }),
  ];
}

function textRun({ text, strong, emphasis }: Run, size?: number): TextRun {
  return new TextRun({ text, bold: strong === true, italics: emphasis === true, ...(size ? { size } : {}) });
}

function standards({ head, words }: WordPlan): Paragraph[] {
  if (head.standards.length === 0) return [];
  const frameworks = new Set(head.standards.map((code) => STANDARDS[code]));
  const mark = (code: string) => (STANDARDS[code] === 'NGSS' ? '*' : '');
  const lines = head.standards.map((code) => `${code}${mark(code)}: ${say(words, `sheet.standard.${code}`)}`);
  const notices = [say(words, 'bench.facts.half'), say(words, 'lesson.certified')];
  if (frameworks.has('NGSS')) notices.push(say(words, 'lesson.ngss'));
  if (frameworks.has('CCSS Math') || frameworks.has('CCSS ELA'))
    notices.push(say(words, 'sheet.colophon.ccss'));
  // Codes and notices stay on one page.
  return [
    heading(say(words, 'bench.facts.standards')),
    ...lines.map((line) => bullet(line, true)),
    ...notices.map((notice, index) => small(notice, index < notices.length - 1)),
  ];
}
