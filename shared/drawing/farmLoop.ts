// The way round the farm as a drawing: stations along one loop in their order, the ground of each zone below them.

/** The loop's sheet, drawing units. */
export const LOOP_BOX = Object.freeze({ width: 460, height: 330 });

const MIDDLE = { x: 230, y: 158 };
const REACH = { x: 176, y: 104 };
// The gate lies at the foot, the taps are the last place before it.
const FOOT_turn = 0.25;

/** A place on the loop, drawing units. */
export interface LoopSpot {
  readonly x: number;
  readonly y: number;
}

/** Ground that stations of one zone share, as a written outline for a block. */
export interface LoopGround<Zone> {
  readonly zone: Zone;
  readonly at: string;
}

/** The places of `count` stations, clockwise from the gate, and of the taps after them. */
export function loopSpots(count: number): { stations: readonly LoopSpot[]; taps: LoopSpot; gate: LoopSpot } {
  const spot = (turn: number) => around(turn, 1);
  return {
    stations: Array.from({ length: count }, (_, index) => spot((index + 1) / (count + 2))),
    taps: spot((count + 1) / (count + 2)),
    gate: spot(0),
  };
}

/** Ground below neighbours of one zone, in order. */
export function loopGrounds<Zone>(zones: readonly Zone[]): LoopGround<Zone>[] {
  const part = 1 / (zones.length + 2);
  const grounds: LoopGround<Zone>[] = [];
  for (let first = 0; first < zones.length;) {
    let last = first;
    while (last + 1 < zones.length && zones[last + 1] === zones[first]) last += 1;
    const [from, to] = [(first + 0.55) * part, (last + 1.45) * part];
    grounds.push({ zone: zones[first] as Zone, at: outlineOf(from, to) });
    first = last + 1;
  }
  return grounds;
}

/** Arrows on the loop between one place and the next: where they stand and the way they point, degrees. */
export function loopArrows(count: number): (LoopSpot & { readonly turn_deg: number })[] {
  return Array.from({ length: count + 2 }, (_, index) => {
    const turn = (index + 0.5) / (count + 2);
    const [here, next] = [around(turn, 1), around(turn + 0.004, 1)];
    return { ...here, turn_deg: (Math.atan2(next.y - here.y, next.x - here.x) * 180) / Math.PI };
  });
}

/** The loop itself as path text. */
export function loopTrack(): string {
  const { x, y } = MIDDLE;
  return `M${x} ${y + REACH.y}A${REACH.x} ${REACH.y} 0 1 1 ${x} ${y - REACH.y}A${REACH.x} ${REACH.y} 0 1 1 ${x} ${y + REACH.y}Z`;
}

function around(turn: number, reach: number): LoopSpot {
  const angle = (turn + FOOT_turn) * 2 * Math.PI;
  return { x: MIDDLE.x + REACH.x * reach * Math.cos(angle), y: MIDDLE.y + REACH.y * reach * Math.sin(angle) };
}

function outlineOf(from: number, to: number): string {
  const steps = Math.max(3, Math.ceil((to - from) * 24));
  const turns = Array.from({ length: steps + 1 }, (_, index) => from + ((to - from) * index) / steps);
  const outer = turns.map((turn) => around(turn, 1.27));
  const inner = turns.toReversed().map((turn) => around(turn, 0.66));
  const text = ({ x, y }: LoopSpot, corner: boolean) => `${x.toFixed(1)},${y.toFixed(1)}${corner ? '!' : ''}`;
  return [outer, inner]
    .flatMap((side) => side.map((spot, index) => text(spot, index === 0 || index === side.length - 1)))
    .join(' ');
}
