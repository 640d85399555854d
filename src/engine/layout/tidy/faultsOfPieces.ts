import type { SizedPiece } from "../../cloth/index.ts";
import type { PieceNode } from "../types.ts";
import { type Bough, clothIn, type Fork, type Way } from "./bough.ts";
import { type Eye, type Fault, inch } from "./fault.ts";
import { isCutAlong } from "./resize.ts";
import type { Cell, Scene } from "./scene.ts";

/** So little plain cloth is no reason to trim. */
const littleCloth = 6 * inch * inch;

/** 6. No trim unless leaving the piece as it is would need more than 6 sq in of plain cloth or one more cut. */
export function sillyCuts(scene: Scene, eye: Eye): Fault[] {
  return scene.cells.flatMap((cell) => {
    if (cell.node.kind !== "piece") return [];
    const node = cell.node;
    return [true, false].flatMap((wide) => {
      const by = trimmedOff(node, wide, eye);
      if (by <= 0 || clothToLeaveIt(cell, { wide, by, eye, root: scene.root }) > littleCloth) return [];
      return [{ kind: "silly cut", ways: [cell.way], by: [by], wide }];
    });
  });
}

export function isTrimmed({ node }: Cell, eye: Eye): boolean {
  return node.kind === "piece" && (trimmedOff(node, true, eye) > 0 || trimmedOff(node, false, eye) > 0);
}

/** In whole steps. Cutting a strip to length is no trim. */
function trimmedOff(node: PieceNode, wide: boolean, { job, pieces }: Eye): number {
  const piece = pieces.get(node.piece);
  if (piece === undefined || isToLength(piece, node.turned, wide)) return 0;
  const has = wide !== node.turned ? piece.width : piece.height;
  const spare = has - (wide ? node.width : node.height) - 2 * job.seam;
  return Math.floor(spare / job.step) * job.step;
}

function isToLength(piece: SizedPiece, turned: boolean, wide: boolean): boolean {
  const free = piece.kind === "strip" || piece.keep === "cut";
  return (free && piece.width === piece.height) || isCutAlong(piece, turned, wide);
}

type Growth = { readonly wide: boolean; readonly by: number; readonly eye: Eye; readonly root: Bough };

function clothToLeaveIt({ way }: Cell, growth: Growth): number {
  const forks = forksOn(way, growth.root);
  if (forks === null) return Number.POSITIVE_INFINITY;
  let needed = 0;
  for (let depth = way.length - 1; depth >= 0; depth--) {
    const fork = forks[depth];
    if (fork === undefined) return Number.POSITIVE_INFINITY;
    const others = fork.parts.filter((_, index) => index !== way[depth]);
    if (fork.beside === growth.wide) {
      if (others.some((other) => givesWay(other, growth))) return needed;
    } else {
      for (const other of others) needed += clothToGrow(other, growth);
      if (needed > littleCloth) return needed;
    }
  }
  return Number.POSITIVE_INFINITY;
}

/** From the root down to the last before the cell. */
function forksOn(way: Way, root: Bough): readonly Fork[] | null {
  const forks: Fork[] = [];
  let at: Bough | undefined = root;
  for (const index of way) {
    if (at?.kind !== "fork") return null;
    forks.push(at);
    at = at.parts[index];
  }
  return forks;
}

function givesWay(bough: Bough, { wide, by }: Growth): boolean {
  const cloth = clothIn(bough);
  return cloth !== null && cloth.role !== "coping" && (wide ? cloth.width : cloth.height) - by >= 2 * inch;
}

function clothToGrow(bough: Bough, growth: Growth): number {
  const { wide, by, eye } = growth;
  if (bough.kind === "fork") return clothToGrowFork(bough, growth);
  if (bough.node.kind === "cloth") return by * (wide ? bough.height : bough.width);
  const serves = bough.node.kind === "piece" && trimmedOff(bough.node, wide, eye) >= by;
  return serves ? 0 : Number.POSITIVE_INFINITY;
}

function clothToGrowFork({ beside, parts }: Fork, growth: Growth): number {
  const each = parts.map((part) => clothToGrow(part, growth));
  return beside === growth.wide ? Math.min(...each) : each.reduce((sum, one) => sum + one, 0);
}

/** 7. Bias and unknown grain stay off the outside. */
export function biasOutside({ root, cells }: Scene, eye: Eye): Fault[] {
  return cells.flatMap((cell) => {
    const { node, way } = cell;
    if (node.kind !== "piece" || eye.pieces.get(node.piece)?.grain === "straight" || !isOutside(cell, root))
      return [];
    return [{ kind: "direction", ways: [way], by: [], wide: null }];
  });
}

/** 7. Stripes run one way within a row. */
export function mixedStripes({ cells }: Scene, eye: Eye): Fault[] {
  const rows = new Map<string, Cell[]>();
  for (const cell of cells) {
    if (!isStriped(cell, eye)) continue;
    const row = cell.way.slice(0, -1).join();
    rows.set(row, [...(rows.get(row) ?? []), cell]);
  }
  return [...rows.values()].flatMap(mixed);
}

export function isStriped({ node }: Cell, { pieces }: Eye): boolean {
  return node.kind === "piece" && pieces.get(node.piece)?.direction === "stripe";
}

function mixed(row: readonly Cell[]): Fault[] {
  const turned = row.filter(({ node }) => node.kind === "piece" && node.turned);
  if (turned.length === 0 || turned.length === row.length) return [];
  const fewer = turned.length * 2 <= row.length ? turned : row.filter((cell) => !turned.includes(cell));
  return fewer.map(({ way }) => ({
    kind: "direction",
    ways: [way, ...row.map((cell) => cell.way)],
    by: [],
    wide: null,
  }));
}

function isOutside({ x, y, right, bottom }: Cell, root: Bough): boolean {
  return x === 0 || y === 0 || right === root.width || bottom === root.height;
}
