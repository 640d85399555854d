import type { Bough, Fork } from "./bough.ts";
import { type Cell, type Line, lineAt, type Sides, sidesOf, type View, type Viewer } from "./scene.ts";

/** What of one layout isn't in another: cells and seams that go, and those that come for them. */
export type Changes = {
  readonly gone: Set<Cell>;
  readonly come: Cell[];
  readonly goneLines: Set<Line>;
  readonly comeLines: Line[];
};

/** A seam between parts of a join in which anything changes counts as another one. */
export function changesFrom(view: View, root: Bough, viewer: Viewer): Changes {
  const changes: Changes = { gone: new Set(), come: [], goneLines: new Set(), comeLines: [] };
  compare(view, { bough: root, x: 0, y: 0 }, { changes, viewer });
  return changes;
}

type Lying = { readonly bough: Bough; readonly x: number; readonly y: number };
type Comparing = { readonly changes: Changes; readonly viewer: Viewer };

function compare(view: View, lying: Lying, comparing: Comparing): void {
  const { bough, x, y } = lying;
  const stays = view.x === x && view.y === y;
  if (stays && view.bough === bough) return;
  if (stays && bough.kind === "fork" && view.bough.kind === "fork" && bough.beside === view.bough.beside) {
    compareParts(view, bough, comparing);
    return;
  }
  goes(view, comparing.changes);
  comes(comparing.viewer.viewOf(bough, x, y, view.trail), comparing.changes);
}

function compareParts(view: View, fork: Fork, { changes, viewer }: Comparing): void {
  const { beside, parts } = fork;
  const { x, y, trail } = view;
  for (const line of view.own) changes.goneLines.add(line);
  let along = 0;
  for (const [index, part] of parts.entries()) {
    if (index > 0) changes.comeLines.push(lineAt(fork, along, { x, y, trail, index: index - 1 }));
    const lying = { bough: part, x: beside ? x + along : x, y: beside ? y : y + along };
    const before = view.parts[index];
    if (before === undefined) comes(viewer.viewOf(part, lying.x, lying.y, trail.at(index)), changes);
    else compare(before, lying, { changes, viewer });
    along += beside ? part.width : part.height;
  }
  for (const before of view.parts.slice(parts.length)) goes(before, changes);
}

function goes({ cells, lines }: View, { gone, goneLines }: Changes): void {
  for (const cell of cells) gone.add(cell);
  for (const line of lines) goneLines.add(line);
}

function comes({ cells, lines }: View, { come, comeLines }: Changes): void {
  for (const cell of cells) come.push(cell);
  for (const line of lines) comeLines.push(line);
}

/** What lies where, once some cells have gone and others come. */
export function sidesAfter(sides: Sides, gone: ReadonlySet<Cell>, come: readonly Cell[]): Sides {
  const added = sidesOf(come);
  const after = (side: keyof Sides) => new RowsAfter(sides[side], gone, added[side]);
  return { left: after("left"), right: after("right"), top: after("top"), bottom: after("bottom") };
}

/** Rows of cells as they are asked for, each made once. */
class RowsAfter {
  private readonly rows: Sides["left"];
  private readonly gone: ReadonlySet<Cell>;
  private readonly added: Sides["left"];
  private readonly made = new Map<number, readonly Cell[]>();

  constructor(rows: Sides["left"], gone: ReadonlySet<Cell>, added: Sides["left"]) {
    this.rows = rows;
    this.gone = gone;
    this.added = added;
  }

  get(at: number): readonly Cell[] | undefined {
    const rest = this.rows.get(at);
    if (rest === undefined) return this.added.get(at);
    const before = this.made.get(at);
    if (before !== undefined) return before;
    const row = rest.filter((cell) => !this.gone.has(cell.whole ?? cell));
    for (const cell of this.added.get(at) ?? []) row.push(cell);
    this.made.set(at, row);
    return row;
  }
}
