import type { Bough, Fork, Way } from "./bough.ts";
import { type Eye, type Fault, inch, isCutOff } from "./fault.ts";
import { after, type Box, before, type Cell, type Scene, span } from "./scene.ts";

/**
 * 1. A cell is no smaller than a quarter of both its neighbours' sides, unless it has its like beside it. Plain cloth
 * between the same cloth is no bit.
 */
export function lonelyBits({ cells, sides }: Scene, { outline }: Eye): Fault[] {
  return cells.flatMap((cell) => {
    if (cell.inSet || isSpacer(cell) || isCutOff(cell, outline)) return [];
    const axes = [true, false].filter((wide) => isSmall(cell, wide, before(cell, wide, sides)));
    const lonely = axes.filter((wide) => isSmall(cell, wide, after(cell, wide, sides)));
    const [wide] = lonely;
    if (wide === undefined || hasTwin(cell, sides)) return [];
    return [{ kind: "lonely", ways: [cell.way], by: [], wide }];
  });
}

function isSpacer({ cloth }: Cell): boolean {
  return cloth !== null && cloth.role !== "plain";
}

function isSmall(cell: Cell, wide: boolean, others: readonly Cell[]): boolean {
  const own = 4 * span(cell, wide);
  return others.length > 0 && others.every((other) => own < span(other, wide));
}

function hasTwin(cell: Cell, sides: Scene["sides"]): boolean {
  const isTwin = ({ node }: Cell) =>
    node.kind === cell.node.kind && node.width === cell.node.width && node.height === cell.node.height;
  return [true, false].some(
    (wide) => before(cell, wide, sides).some(isTwin) || after(cell, wide, sides).some(isTwin),
  );
}

/** 2. A pieced strip under 4 in wide is at most 30 in long, or plain cloth lies along both its sides. */
export function caterpillars(scene: Scene, { outline }: Eye): Fault[] {
  const found: Fault[] = [];
  lookInto(scene.root, [], (fork, way) => {
    if (!isThin(fork)) return;
    for (const run of longRuns(scene, fork, way)) {
      const box = boxOf(run);
      if (run.some(({ inSet }) => inSet) || isCutOff(box, outline)) continue;
      if (isPlainAlong(box, fork.beside, scene)) continue;
      found.push({
        kind: "caterpillar",
        ways: [...run.map((cell) => cell.way), way],
        by: [],
        wide: fork.beside,
      });
    }
  });
  return found;
}

/** Is there anything in it that is long and thin enough? */
export function mayBeCaterpillar(bough: Bough): boolean {
  if (bough.kind === "leaf") return false;
  const before = thinIn.get(bough);
  if (before !== undefined) return before;
  const thin = isThin(bough) || bough.parts.some(mayBeCaterpillar);
  thinIn.set(bough, thin);
  return thin;
}

const thinIn = new WeakMap<Fork, boolean>();

function isThin({ beside, width, height }: Fork): boolean {
  const [long, across] = beside ? [width, height] : [height, width];
  return across < 4 * inch && long > 30 * inch;
}

function lookInto(bough: Bough, way: Way, look: (fork: Fork, way: Way) => void): void {
  if (bough.kind === "leaf") return;
  look(bough, way);
  for (const [at, part] of bough.parts.entries()) lookInto(part, [...way, at], look);
}

function longRuns({ cells }: Scene, { beside }: Fork, way: Way): Cell[][] {
  const runs: Cell[][] = [[]];
  for (const cell of cells) {
    if (!way.every((index, depth) => cell.way[depth] === index)) continue;
    if (cell.cloth !== null) runs.push([]);
    else runs.at(-1)?.push(cell);
  }
  return runs.filter((run) => run.length > 1 && span(boxOf(run), beside) > 30 * inch);
}

function boxOf(cells: readonly Box[]): Box {
  return {
    x: Math.min(...cells.map(({ x }) => x)),
    y: Math.min(...cells.map(({ y }) => y)),
    right: Math.max(...cells.map(({ right }) => right)),
    bottom: Math.max(...cells.map(({ bottom }) => bottom)),
  };
}

function isPlainAlong(run: Box, wide: boolean, { sides }: Scene): boolean {
  const [above, under] = [before(run, !wide, sides), after(run, !wide, sides)];
  if (above.length === 0 || under.length === 0) return false;
  return [...above, ...under].every(({ cloth }) => cloth !== null);
}

/** 3. Nothing under 4 in across at the top's outline, nothing under 2 in anywhere outside a set. */
export function slivers({ cells }: Scene, { outline }: Eye): Fault[] {
  return cells.flatMap((cell) => {
    if (isCutOff(cell, outline)) return [];
    const found: Fault[] = [];
    for (const wide of [true, false]) {
      const own = span(cell, wide);
      if (outline !== null && own < 4 * inch && liesAt(cell, outline, wide))
        found.push({ kind: "sliver", ways: [cell.way], by: [4 * inch - own], wide });
    }
    const thin = Math.min(cell.node.width, cell.node.height);
    if (!cell.inSet && thin < 2 * inch)
      found.push({ kind: "sliver", ways: [cell.way], by: [2 * inch - thin], wide: null });
    return found;
  });
}

function liesAt(cell: Box, outline: Box, wide: boolean): boolean {
  return wide
    ? cell.x <= outline.x || cell.right >= outline.right
    : cell.y <= outline.y || cell.bottom >= outline.bottom;
}
