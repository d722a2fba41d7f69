// Shows new numbers on an open page of the board: all that tells them changes in one go. Fetched only when they come.
import { flushSync, mount, unmount, type Component } from 'svelte';
import { answerTo } from '../../../../shared/board/answers.ts';
import { tell } from '../../../../shared/board/tell.ts';
import type { QuestionName } from '../../../../shared/board/topics.ts';
import type { BoardFarm, BoardInput } from '../../../../shared/board/types.ts';
import type { NutrientRow } from '../../../../shared/milk/composition.ts';
import type { Dictionary, Words } from '../../../../shared/words/words.ts';
import Answer from '../Answer.svelte';
import HomeTotal from '../HomeTotal.svelte';
import ProofNumbers from '../ProofNumbers.svelte';
import ProofRows from '../ProofRows.svelte';
import WeekLine from '../WeekLine.svelte';

/** What a language's pages need beside the farm's numbers; made with the site. */
export interface LiveWords {
  readonly board: Dictionary;
  /** The words of each question. */
  readonly questions: Readonly<Partial<Record<QuestionName, Dictionary>>>;
  readonly composition: readonly NutrientRow[];
}

/** A part of the page that was drawn anew, and how it comes to stand in the place of the old one. */
interface Redrawn {
  readonly part: Record<string, unknown>;
  readonly stand: () => void;
}

let shown: readonly Redrawn[] = [];

/** Fetches what a language's pages need; what it gives changes a page to a farm's numbers, wholly or not at all. */
export async function liveShower(
  lang: string,
  base: string,
): Promise<(page: Document, farm: BoardFarm) => void> {
  const response = await fetch(`${base}barn/live/${lang}.json`);
  if (!response.ok) throw new Error(`The words for new numbers did not come (${response.status}).`);
  const live = (await response.json()) as LiveWords;
  const words: Words = { lang, entries: live.board };
  return (page, farm) => {
    const input: BoardInput = { ...farm, lang, composition: live.composition };
    const name = page.querySelector<HTMLElement>('main')?.dataset['question'] as QuestionName;
    const entries = live.questions[name];
    const redrawn = entries ? questionParts(page, { name, input, words, own: { lang, entries } }) : homeParts(page, input, words); // prettier-ignore
    flushSync();
    // Everything is drawn; from here on nothing can fail halfway.
    for (const { stand } of redrawn) stand();
    for (const { part } of shown) void unmount(part);
    shown = redrawn;
  };
}

/** The answer to a question, or its proof. */
function questionParts(
  page: Document,
  props: { name: QuestionName; input: BoardInput; words: Words; own: Words },
): Redrawn[] {
  const { name, input, words, own } = props;
  const answer = answerTo(name, input);
  const week = weekLine(page, { words, week: input.week, live: answer.live });
  if (page.querySelector('#answer')) return [week, redraw(page, Answer, props, placedIn(page, '#answer'))];
  const { units } = input;
  const change = tell(own, answer, 'change');
  const numbers = redraw(page, ProofNumbers, { answer, units, words, own }, (nodes) => {
    placedIn(page, '#proof-numbers')(nodes);
    placedIn(page, '#proof-change')([page.createTextNode(change)]);
  });
  const rows = redraw(page, ProofRows, { words, units, proof: answer.proof }, placedIn(page, '#proof-rows'));
  return [week, numbers, rows];
}

const placedIn = (page: Document, place: string) => (nodes: readonly ChildNode[]) =>
  page.querySelector(place)?.replaceChildren(...nodes);

function homeParts(page: Document, input: BoardInput, words: Words): Redrawn[] {
  const lead = page.querySelector('main.home .lead');
  const total = redraw(page, HomeTotal, { words, input }, (nodes) => {
    lead?.querySelector('.total')?.remove();
    lead?.append(...nodes);
  });
  return [total, weekLine(page, { words, week: input.week, live: true })];
}

function weekLine(page: Document, props: { words: Words; week: BoardInput['week']; live: boolean }): Redrawn {
  const header = page.querySelector('main > header');
  return redraw(page, WeekLine, props, (nodes) => {
    header?.querySelector('.week')?.remove();
    header?.append(...nodes);
  });
}

/** Draws a part beside the page. */
function redraw<Props extends Record<string, unknown>>(
  page: Document,
  component: Component<Props>,
  props: Props,
  stand: (nodes: readonly ChildNode[]) => void,
): Redrawn {
  const target = page.createElement('div');
  const part = mount(component, { target, props });
  return { part, stand: () => stand([...target.childNodes]) };
}
