import type { Bough } from "./bough.ts";
import { type Changes, changesFrom, sidesAfter } from "./changes.ts";
import type { Eye, Fault } from "./fault.ts";
import { faultsIn, type Look, looksAtCells, looksAtLines } from "./faults.ts";
import { caterpillars, mayBeCaterpillar } from "./faultsOfCells.ts";
import { isWrongIfLong, wrongLongSeams } from "./faultsOfLongSeams.ts";
import { type HeavyPoint, halvesInLine, heavyPoints, isPieceOf, type Point } from "./faultsOfMeetings.ts";
import { isStriped, isTrimmed, mixedStripes, sillyCuts } from "./faultsOfPieces.ts";
import { likeLength } from "./likes.ts";
import {
  after,
  type Box,
  banksOf,
  before,
  type Cell,
  type Line,
  quartersIn,
  type Scene,
  type Sides,
  type Viewer,
  type WholeScene,
} from "./scene.ts";
import { usedIn } from "./used.ts";

/** What an eye finds in a layout. */
export type Finding = {
  readonly faults: number;
  /** How far like touches like. */
  readonly like: number;
  /** Of her leftovers, in square inches, as `usedIn` counts. */
  readonly used: number;
};

/**
 * A layout that was looked at whole. Others that differ little from it are judged by what differs: what an eye finds in
 * them is the same as if they were looked at whole, in a tenth of the time.
 */
export class Known {
  readonly scene: WholeScene;
  readonly faults: readonly Fault[];
  readonly like: number;
  readonly used: number;
  private readonly eye: Eye;
  private readonly viewer: Viewer;
  private readonly likeOf = new Map<Cell, number>();
  private readonly faultsOfCell = new Map<Cell, number>();
  private readonly faultsOfLine = new Map<Line, number>();
  private readonly linesAt: ReadonlyMap<number, readonly Line[]>;
  private readonly wrongIfLong: readonly Line[];
  private readonly trimmed: readonly Cell[];
  private readonly striped: readonly Cell[];
  private readonly inHalves: readonly Cell[];
  private readonly hasHalves: boolean;
  private readonly heavy: readonly HeavyPoint[];
  /** Faults that are of one cell or one line. */
  private readonly near: number;

  constructor(root: Bough, eye: Eye, viewer: Viewer) {
    this.eye = eye;
    this.viewer = viewer;
    const scene = viewer.sceneOf(root);
    this.scene = scene;
    this.faults = faultsIn(scene, eye);
    this.like = likeLength(scene, eye);
    this.used = usedIn(scene.cells, eye);
    this.linesAt = filedLines(scene.lines);
    this.wrongIfLong = scene.lines.filter((line) => isWrongIfLong(line, root, eye));
    this.trimmed = scene.cells.filter((cell) => isTrimmed(cell, eye));
    this.striped = scene.cells.filter((cell) => isStriped(cell, eye));
    this.inHalves = scene.cells.filter((cell) => isInHalves(cell, eye));
    this.hasHalves = scene.quarters.some(isHalf);
    this.heavy = this.hasHalves ? heavyPoints(scene.quarters, () => true) : [];
    this.near = countIn(scene, eye, looksAtCells) + countIn(scene, eye, looksAtLines);
  }

  get root(): Bough {
    return this.scene.root;
  }

  /** Another layout's difference; what is wrong with it is counted only when it is asked for. */
  glanceAt(root: Bough): Glance {
    const changes = changesFrom(this.scene.view, root, this.viewer);
    const { gone, come } = changes;
    const boxes = [...gone, ...come];
    const touched = this.touchedCells(boxes, gone);
    const cells = [...come, ...touched];
    const sides = sidesAfter(this.scene.sides, gone, come);
    let like = this.like + likeLength({ cells, sides }, this.eye);
    for (const cell of gone) like -= this.likeAt(cell);
    for (const cell of touched) like -= this.likeAt(cell);
    const used = this.used + usedIn(come, this.eye) - usedIn(gone, this.eye);
    const rest = { changes, boxes, touched, scene: { root, cells, sides } };
    return { like, used, faults: (most) => this.countFaults(rest, most) };
  }

  private touchedCells(boxes: readonly Box[], gone: ReadonlySet<Cell>): ReadonlySet<Cell> {
    const touched = new Set<Cell>();
    const { sides } = this.scene;
    for (const box of boxes)
      for (const wide of [true, false])
        for (const cells of [before(box, wide, sides), after(box, wide, sides)])
          for (const cell of cells) if (!gone.has(cell)) touched.add(cell);
    return touched;
  }

  private likeAt(cell: Cell): number {
    return remembered(this.likeOf, cell, () =>
      likeLength({ cells: [cell], sides: this.scene.sides }, this.eye),
    );
  }

  private countFaults({ changes, boxes, touched, scene }: Rest, most: number): number | null {
    const { root } = scene;
    const { gone, come, goneLines, comeLines } = changes;
    const near = this.nearFaults({ changes, boxes, touched, scene }, most - this.near);
    if (near === null) return null;
    let count = this.near + near;
    const lines = kept(this.wrongIfLong, goneLines, comeLines, (line) => isWrongIfLong(line, root, this.eye));
    const trimmed = kept(this.trimmed, gone, come, (cell) => isTrimmed(cell, this.eye));
    const striped = kept(this.striped, gone, come, (cell) => isStriped(cell, this.eye));
    const inHalves = kept(this.inHalves, gone, come, (cell) => isInHalves(cell, this.eye));
    const others: readonly (() => number)[] = [
      () => wrongLongSeams({ ...nothing, root, lines }, this.eye).length,
      () => halvesInLine({ ...nothing, root, cells: inHalves }, this.eye).length,
      () => sillyCuts({ ...nothing, root, cells: trimmed }, this.eye).length,
      () => mixedStripes({ ...nothing, root, cells: striped }, this.eye).length,
      () => this.caterpillarsIn(scene),
      () => this.heavyIn(changes, boxes),
    ];
    for (const other of others) {
      if (count > most) return null;
      count += other();
    }
    return count > most ? null : count;
  }

  /** How many more there are of those that ask nothing but what is near; null: more than `most`. */
  private nearFaults({ changes, boxes, touched, scene }: Rest, most: number): number | null {
    const { gone, come, goneLines, comeLines } = changes;
    const touchedLines = this.touchedLines(boxes, goneLines);
    let more = 0;
    for (const cells of [gone, touched]) for (const cell of cells) more -= this.ofCell(cell);
    for (const lines of [goneLines, touchedLines]) for (const line of lines) more -= this.ofLine(line);
    for (const look of looksAtCells) {
      more += look({ ...nothing, ...scene }, this.eye).length;
      if (more > most) return null;
    }
    const lines = [...comeLines, ...touchedLines];
    const sides = this.quarterSidesAfter(gone, come, scene.sides);
    const banks = lines.map((line) => banksOf(line, sides));
    more += countIn({ ...nothing, root: scene.root, lines, banks }, this.eye, looksAtLines);
    return more;
  }

  private quarterSidesAfter(gone: Changes["gone"], come: Changes["come"], sides: Sides): Sides {
    const { quarterSides } = this.scene;
    const quarters = quartersIn(come);
    return quarterSides === this.scene.sides && quarters === come
      ? sides
      : sidesAfter(quarterSides, gone, quarters);
  }

  private touchedLines(boxes: readonly Box[], gone: ReadonlySet<Line>): ReadonlySet<Line> {
    const touched = new Set<Line>();
    for (const box of boxes) {
      for (const upright of [true, false]) {
        const [from, to] = upright ? [box.y, box.bottom] : [box.x, box.right];
        for (const at of upright ? [box.x, box.right] : [box.y, box.bottom])
          for (const line of this.linesAt.get(keyOf(upright, at)) ?? [])
            if (line.from < to && line.to > from && !gone.has(line)) touched.add(line);
      }
    }
    return touched;
  }

  private ofCell(cell: Cell): number {
    return remembered(this.faultsOfCell, cell, () =>
      countIn({ ...this.scene, cells: [cell] }, this.eye, looksAtCells),
    );
  }

  private ofLine(line: Line): number {
    return remembered(this.faultsOfLine, line, () => {
      const banks = [banksOf(line, this.scene.quarterSides)];
      return countIn({ ...this.scene, lines: [line], banks }, this.eye, looksAtLines);
    });
  }

  private caterpillarsIn({ root, sides }: Rest["scene"]): number {
    if (!mayBeCaterpillar(root)) return 0;
    const { cells } = this.viewer.viewOf(root);
    return caterpillars({ ...nothing, root, cells, sides }, this.eye).length;
  }

  private heavyIn({ gone, come }: Changes, boxes: readonly Box[]): number {
    const added = quartersIn(come);
    if (!this.hasHalves && !added.some(isHalf)) return 0;
    const isNear = ({ x, y }: Point) => boxes.some((box) => meets(box, { x, y, right: x, bottom: y }));
    const round = this.scene.quarters.filter(
      (cell) => !gone.has(cell.whole ?? cell) && boxes.some((box) => meets(box, cell)),
    );
    const before = this.heavy.filter(isNear).length;
    return this.heavy.length - before + heavyPoints([...round, ...added], isNear).length;
  }
}

/** `faults`: null if there are more than `most`. */
export type Glance = {
  readonly like: number;
  readonly used: number;
  readonly faults: (most: number) => number | null;
};

type Rest = {
  readonly changes: Changes;
  readonly boxes: readonly Box[];
  readonly touched: ReadonlySet<Cell>;
  /** Of the other layout: the cells that came, or that touch something which came or went. */
  readonly scene: Pick<Scene, "root" | "cells" | "sides">;
};

const empty = new Map<number, readonly Cell[]>();
const nothing = {
  cells: [],
  quarters: [],
  lines: [],
  banks: [],
  sides: { left: empty, right: empty, top: empty, bottom: empty },
};

function countIn(scene: Scene, eye: Eye, looks: readonly Look[]): number {
  return looks.reduce((sum, look) => sum + look(scene, eye).length, 0);
}

function remembered<T>(known: Map<T, number>, of: T, count: () => number): number {
  const before = known.get(of);
  if (before !== undefined) return before;
  const made = count();
  known.set(of, made);
  return made;
}

function kept<T>(
  known: readonly T[],
  gone: ReadonlySet<T>,
  come: readonly T[],
  isOne: (one: T) => boolean,
): T[] {
  return [...known.filter((one) => !gone.has(one)), ...come.filter(isOne)];
}

function filedLines(lines: readonly Line[]): Map<number, Line[]> {
  const filed = new Map<number, Line[]>();
  for (const line of lines) {
    const key = keyOf(line.upright, line.at);
    const row = filed.get(key);
    if (row === undefined) filed.set(key, [line]);
    else row.push(line);
  }
  return filed;
}

function keyOf(upright: boolean, at: number): number {
  return 2 * at + (upright ? 1 : 0);
}

function isInHalves(cell: Cell, { halves }: Eye): boolean {
  return halves?.some((spot) => isPieceOf(cell, spot)) ?? false;
}

function isHalf({ falling, rising }: Cell): boolean {
  return falling || rising;
}

/** Also in a side or a corner alone. */
function meets(one: Box, other: Box): boolean {
  return one.x <= other.right && other.x <= one.right && one.y <= other.bottom && other.y <= one.bottom;
}
