import type { Sort } from "./sorts.ts";

/**
 * The places along one side at which a cell may end when all are pushed to the left, or up: sums of the items' own
 * sides (the normal patterns of Herz 1972; Christofides and Whitlock 1977). `at` holds them in order, from 0;
 * `upTo[n]` is the number of the last one that is not beyond n.
 */
export type Marks = { readonly at: Int32Array; readonly upTo: Int32Array };

function marksAlong(sorts: readonly Sort[], side: "width" | "height", long: number): Marks {
  const reached = new Uint8Array(long + 1);
  reached[0] = 1;
  for (const { faces, copies } of sorts) {
    const sides = faces.map((face) => face[side]);
    for (let copy = 0; copy < copies; copy++) if (!addOne(reached, sides)) break;
  }
  return numbered(reached);
}

/** One more piece: false where that reaches nothing new. */
function addOne(reached: Uint8Array, sides: readonly number[]): boolean {
  let grew = false;
  for (let place = reached.length - 1; place > 0; place--) {
    if (reached[place] === 1 || !sides.some((side) => reached[place - side] === 1)) continue;
    reached[place] = 1;
    grew = true;
  }
  return grew;
}

function numbered(reached: Uint8Array): Marks {
  const at: number[] = [];
  const upTo = new Int32Array(reached.length);
  for (const [place, isReached] of reached.entries()) {
    if (isReached === 1) at.push(place);
    upTo[place] = at.length - 1;
  }
  return { at: Int32Array.from(at), upTo };
}

/** The regions up to the whole one that differ in what can fill them. */
export type Grid = {
  readonly across: Marks;
  readonly down: Marks;
  /** How many there are, with all cuts through them. */
  readonly cost: number;
};

export function gridOf(sorts: readonly Sort[], width: number, height: number): Grid {
  const across = marksAlong(sorts, "width", width);
  const down = marksAlong(sorts, "height", height);
  const [columns, rows] = [across.at.length, down.at.length];
  return { across, down, cost: columns * rows + rows * cutsIn(across) + columns * cutsIn(down) };
}

/** Cuts up to the middle, over all marks. */
function cutsIn({ at, upTo }: Marks): number {
  return at.reduce((sum, place) => sum + (upTo[place >> 1] ?? 0), 0);
}
