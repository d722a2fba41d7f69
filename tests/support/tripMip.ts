// The shortest school day as a mixed-integer model in CPLEX LP text, for solvers that know nothing of us.
import type { Common, Meal, SmallDay } from '../../shared/trip/shortest/smallDay.ts';

/** Writes rows of a model; times are minutes after arrival. */
class Model {
  readonly rows: string[] = [];
  readonly bounds: string[] = [];
  readonly binaries: string[] = [];
  /** Longer than any two times of the day are apart. */
  readonly big: number;

  constructor(big: number) {
    this.big = big;
  }

  /** `left >= right`, as terms `[factor, name]` on the left and a number on the right. */
  atLeast(terms: readonly (readonly [number, string])[], right: number): void {
    const left = terms
      .map(([factor, name]) => `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${name}`)
      .join(' ');
    this.rows.push(` r${this.rows.length}: ${left} >= ${right}`);
  }

  binary(name: string): string {
    this.binaries.push(name);
    return name;
  }

  /** `later >= sooner + minutes` wherever each of the conditions is 1 (`!name`: is 0). */
  after(later: string, sooner: string, minutes: number, ...conditions: string[]): void {
    let right = minutes;
    const terms: (readonly [number, string])[] = [[1, later], [-1, sooner]]; // prettier-ignore
    for (const condition of conditions) {
      const off = condition.startsWith('!');
      terms.push([off ? this.big : -this.big, off ? condition.slice(1) : condition]);
      if (!off) right -= this.big;
    }
    this.atLeast(terms, right);
  }

  text(): string {
    return ['Minimize', ' goal: load', 'Subject To', ...this.rows, 'Bounds', ...this.bounds, 'Binary', ` ${this.binaries.join(' ')}`, 'End', ''].join('\n'); // prettier-ignore
  }
}

const numbers = (count: number) => Array.from({ length: count }, (_, at) => at);
const visit = (party: number, station: number) => `x_${party}_${station}`;

/**
 * The day as rows of linear inequalities, with at most `pauses` pauses before and as many after the meal: an open shop
 * with disjunctions by a big number (textbook; from memory) and, in common for all parties, meal and pauses. `load` is
 * the minute after arrival at which loading begins. Without a meal there are at most
 * twice as many.
 */
export function tripMip(day: SmallDay, pauses: number): string {
  if (day.meal === 'no seats') throw new Error('Without seats there is nothing to solve.');
  const span = day.leave - day.arrive;
  const longest = Math.max(...day.between_min.flat(), ...day.minutes, day.fromTaps_min, day.pause.chanceTo);
  const model = new Model(span + longest * 2 + Math.max(0, ...(day.meal?.leaves ?? [])));
  opening(model, day);
  shop(model, day);
  milking(model, day);
  const last = commons(model, day, pauses);
  ending(model, day, pauses, last);
  model.bounds.push(` load <= ${span - day.load_min - day.busSpare_min}`);
  if (model.binaries.length === 0) model.binary('unused');
  return model.text();
}

/** `ready` is when the opening is over; its toilets begin in time. */
function opening(model: Model, day: SmallDay): void {
  const toilets_min = day.ready - day.firstChance;
  model.atLeast([[1, 'ready']], day.ready - day.arrive);
  model.atLeast([[-1, 'ready']], -(day.within_min + toilets_min));
}

/** A party is at one station at a time, and a station has one party at a time. */
function shop(model: Model, day: SmallDay): void {
  const stations = numbers(day.minutes.length);
  for (const p of numbers(day.parties))
    for (const s of stations) {
      const minutes = day.minutes[s] ?? 0;
      model.after(visit(p, s), 'ready', day.first_min);
      for (const t of stations.slice(s + 1)) {
        const first = model.binary(`y_${p}_${s}_${t}`);
        model.after(visit(p, t), visit(p, s), minutes + (day.between_min[s]?.[t] ?? 0), first);
        model.after(visit(p, s), visit(p, t), (day.minutes[t] ?? 0) + (day.between_min[t]?.[s] ?? 0), `!${first}`);
      }
      for (const q of numbers(day.parties).slice(p + 1)) {
        const first = model.binary(`z_${p}_${q}_${s}`);
        model.after(visit(q, s), visit(p, s), minutes, first);
        model.after(visit(p, s), visit(q, s), minutes, `!${first}`);
      }
    }
} // prettier-ignore

/** All visits where a doe is milked lie within one of the times. */
function milking(model: Model, { milking: shown, minutes, parties, arrive }: SmallDay): void {
  if (shown === null) return;
  const chosen = shown.spans.map((span, at) => ({ ...span, name: model.binary(`g_${at}`) }));
  if (chosen.length === 0) model.atLeast([[1, 'ready']], model.big * 10);
  else model.atLeast(chosen.map(({ name }) => [1, name] as const), 1); // prettier-ignore
  const minutes_min = minutes[shown.station] ?? 0;
  for (const { from, to, name } of chosen) {
    // A time of milking may lie long before or after the visit.
    const end = to - arrive - minutes_min;
    const big = model.big + Math.max(0, -end);
    for (const p of numbers(parties)) {
      const x = visit(p, shown.station);
      model.atLeast([[1, x], [-Math.max(0, from - arrive), name]], 0); // prettier-ignore
      model.atLeast([[-1, x], [-big, name]], -end - big); // prettier-ignore
    }
  }
}

/** A pause by its number, whether it is held, and the end of the last chance for toilets with its minutes after that. */
interface Chance {
  readonly name: string;
  /** Minutes after `name`, and the binary that they are counted with (none: always). */
  readonly minutes: number;
  readonly held: string | null;
}

const pausesBefore = (day: SmallDay, pauses: number) => (day.meal === null ? 2 * pauses : pauses);

/** Pauses, meal, pauses. A pause that is not held has no length and lies at the end of the chance before it. */
function commons(model: Model, day: SmallDay, pauses: number): Chance {
  let last: Chance = { name: 'ready', minutes: 0, held: null };
  const meal = day.meal === 'no seats' ? null : day.meal;
  for (const k of numbers(pausesBefore(day, pauses))) last = pauseRows(model, day, `b_${k}`, k > 0 ? `held_b_${k - 1}` : null, last, null);
  if (meal === null) return last;
  mealRows(model, day, meal, last);
  last = { name: 'meal', minutes: meal.chanceTo, held: null };
  for (const k of numbers(pauses)) last = pauseRows(model, day, `a_${k}`, k > 0 ? `held_a_${k - 1}` : null, last, meal);
  return last;
} // prettier-ignore

/** `later + more` is not before the end of a chance and, counted with `held`, not longer after it than is allowed. */
function chain(
  model: Model,
  day: SmallDay,
  later: string,
  more: number,
  last: Chance,
  held: string | null,
): void {
  const before: (readonly [number, string])[] = [[1, later], [-1, last.name]]; // prettier-ignore
  if (last.held !== null) before.push([-last.minutes, last.held]);
  const since = last.held === null ? last.minutes : 0;
  model.atLeast(before, since - more);
  const within = before.map(([factor, name]) => [-factor, name] as const);
  if (held === null) model.atLeast(within, more - since - day.within_min);
  else model.atLeast([...within, [day.within_min, held]], more - since);
}

function pauseRows(model: Model, day: SmallDay, name: string, before: string | null, last: Chance, meal: Meal | null): Chance {
  const held = model.binary(`held_${name}`);
  const { chanceTo } = day.pause;
  if (before !== null) model.atLeast([[1, before], [-1, held]], 0); // prettier-ignore
  chain(model, day, name, 0, last, held);
  model.after(name, 'ready', day.toTaps_min, held);
  if (meal !== null) for (const leaves of meal.leaves) model.after(name, 'meal', leaves, held);
  for (const p of numbers(day.parties))
    for (const s of numbers(day.minutes.length)) {
      const first = model.binary(`w_${name}_${p}_${s}`);
      model.after(name, visit(p, s), (day.minutes[s] ?? 0) + day.toTaps_min, first, held);
      model.after(visit(p, s), name, chanceTo + day.fromTaps_min, `!${first}`, held);
    }
  return { name, minutes: chanceTo, held };
} // prettier-ignore

function mealRows(model: Model, day: SmallDay, meal: Common, last: Chance): void {
  model.atLeast([[1, 'meal']], meal.earliest - day.arrive);
  model.atLeast([[-1, 'meal']], -(meal.latest - day.arrive));
  chain(model, day, 'meal', meal.chanceFrom, last, null);
  for (const p of numbers(day.parties)) {
    const comes = meal.comes[p] ?? 0;
    model.after('meal', 'ready', day.toTaps_min - comes);
    const terms: (readonly [number, string])[] = [[1, 'meal'], [-1, last.name]]; // prettier-ignore
    if (last.held !== null) terms.push([-last.minutes, last.held]);
    model.atLeast(terms, -comes);
    for (const s of numbers(day.minutes.length)) {
      const first = model.binary(`v_${p}_${s}`);
      model.after('meal', visit(p, s), (day.minutes[s] ?? 0) + day.toTaps_min - comes, first);
      model.after(visit(p, s), 'meal', (meal.leaves[p] ?? 0) + day.fromTaps_min, `!${first}`);
    }
  }
}

/** Washing where it is due (`due` is 1), the walk to the gate, loading, and the last chance for toilets before the buses leave. */
function ending(model: Model, day: SmallDay, pauses: number, last: Chance): void {
  const due = model.binary('due');
  chain(model, day, 'load', day.load_min + day.busSpare_min, last, null);
  const held = [
    ...numbers(pausesBefore(day, pauses)).map((k) => `b_${k}`),
    ...(day.meal === null ? [] : numbers(pauses).map((k) => `a_${k}`)),
  ];
  for (const p of numbers(day.parties)) {
    const wash_min = day.lastWash.minutes[p] ?? 0;
    const washed = `h_${p}`;
    model.after('load', washed, wash_min + day.gateWalk_min, due);
    for (const s of numbers(day.minutes.length)) {
      const minutes = day.minutes[s] ?? 0;
      if (day.dirty[s] && day.meal === null) model.atLeast([[1, due]], 1);
      if (day.dirty[s] && day.meal !== null) model.atLeast([[1, due], [1, `v_${p}_${s}`]], 1); // prettier-ignore
      model.after('load', visit(p, s), minutes + day.gateWalk_min);
      model.after(washed, visit(p, s), minutes + day.toTaps_min, due);
    }
    for (const name of held) {
      model.after('load', name, day.pause.chanceTo + day.gateWalk_min, `held_${name}`);
      model.after(washed, name, day.pause.chanceTo, `held_${name}`, due);
    }
    if (day.meal !== null && day.meal !== 'no seats') {
      model.after('load', 'meal', (day.meal.leaves[p] ?? 0) + day.gateWalk_min);
      model.after(washed, 'meal', day.meal.leaves[p] ?? 0, due);
    }
    for (const q of numbers(day.parties).slice(p + 1)) {
      if (day.lastWash.together) continue;
      const first = model.binary(`o_${p}_${q}`);
      model.after(`h_${q}`, washed, wash_min, first);
      model.after(washed, `h_${q}`, day.lastWash.minutes[q] ?? 0, `!${first}`);
    }
  }
}
