import { isLongJoin } from "../../work/index.ts";
import type { LayoutNode, PieceNode } from "../types.ts";
import { type Bough, partAt } from "./bough.ts";
import { type Eye, type Fault, inch, isCutOff } from "./fault.ts";
import type { Line, Scene } from "./scene.ts";

type Long = Line & { readonly lines: readonly Line[] };

/**
 * 8. Seams of half the side or more, those in one line together, lie 3 in off the centre lines and 1½ in off the top's
 * outline.
 */
export function wrongLongSeams({ lines, root }: Scene, { outline }: Eye): Fault[] {
  const placed = lines.flatMap((line) => {
    const by = wrongBy(line, root, outline);
    return by === null ? [] : [{ line, by }];
  });
  return inOneLine(placed.map(({ line }) => line)).flatMap(({ upright, from, to, lines: all }) => {
    if (2 * (to - from) < (upright ? root.height : root.width)) return [];
    const ways = all.map(({ way, index }) => (index < 0 ? way : [...way, index]));
    const by = placed.find(({ line }) => line === all[0])?.by ?? [];
    return [{ kind: "long seam", ways, by, wide: upright }];
  });
}

/** Would it be wrong if it were long, alone or in one line with others? */
export function isWrongIfLong(line: Line, root: Bough, { outline }: Eye): boolean {
  return wrongBy(line, root, outline) !== null;
}

/** By how much a seam would have to move, one way or the other, if it is long; null: it lies well. */
function wrongBy({ upright, at }: Line, root: Bough, outline: Eye["outline"]): readonly number[] | null {
  const off = Math.abs(at - (upright ? root.width : root.height) / 2);
  if (off < 3 * inch) return [3 * inch - off, 3 * inch + off];
  if (outline === null) return null;
  const [low, high] = upright ? [outline.x, outline.right] : [outline.y, outline.bottom];
  const near = Math.min(Math.abs(at - low), Math.abs(at - high));
  return near < 1.5 * inch ? [1.5 * inch - near, 1.5 * inch + near] : null;
}

function inOneLine(lines: readonly Line[]): Long[] {
  const sorted = [...lines].sort((one, other) => one.at - other.at || one.from - other.from);
  const found: Long[] = [];
  for (const line of sorted) {
    const at = found.findLastIndex(
      (other) => other.upright === line.upright && other.at === line.at && other.to >= line.from,
    );
    const last = found[at];
    if (last === undefined) found.push({ ...line, lines: [line] });
    else found[at] = { ...last, to: Math.max(last.to, line.to), lines: [...last.lines, line] };
  }
  return found;
}

/** 8. Blocks lie 2 in inside the top's outline on a frame, else 1. */
export function blocksOutside({ cells }: Scene, { outline, pieces, job }: Eye): Fault[] {
  if (outline === null) return [];
  const inside = job.top?.method === "frame" ? 2 * inch : inch;
  return cells.flatMap((cell) => {
    const piece = cell.node.kind === "piece" ? pieces.get(cell.node.piece) : undefined;
    if (piece?.kind !== "block" && piece?.kind !== "part-block") return [];
    if (isCutOff(cell, outline) && piece.use === "edge") return [];
    const across = Math.min(cell.x - outline.x, outline.right - cell.right);
    const down = Math.min(cell.y - outline.y, outline.bottom - cell.bottom);
    if (Math.min(across, down) >= inside) return [];
    const wide = across < inside ? (down < inside ? null : true) : false;
    return [{ kind: "long seam", ways: [cell.way], by: [inside - Math.min(across, down)], wide }];
  });
}

/** 9. Along a join over 18 in, or one on which more than 6 seams end, something on one side can be left long. */
export function joinsWithoutGiver({ root, lines, banks }: Scene, eye: Eye): Fault[] {
  return lines.flatMap((line, at) => {
    const [one = [], other = []] = banks[at] ?? [];
    const seams = Math.max(one.length, other.length) - 1;
    if (line.index < 0 || !isLongJoin(line.to - line.from, seams)) return [];
    const fork = partAt(root, line.way);
    if (fork?.kind !== "fork") return [];
    const sides = [fork.parts[line.index], fork.parts[line.index + 1]];
    if (sides.some((side) => side !== undefined && gives(side, !line.upright, eye))) return [];
    const ways = [line.index, line.index + 1].map((index) => [...line.way, index]);
    const cells = [...one, ...other].map(({ way }) => way);
    return [{ kind: "no giver", ways, cells, by: [], wide: !line.upright }];
  });
}

/** Of a row along the join one part is enough: within it, it is trimmed before the row is closed. */
function gives(bough: Bough, wide: boolean, eye: Eye): boolean {
  if (bough.kind === "leaf") return nodeGives(bough.node, wide, eye);
  if (bough.beside === wide) return bough.parts.some((part) => gives(part, wide, eye));
  return bough.parts.every((part) => standsOver(part, wide, eye));
}

function nodeGives(node: LayoutNode, wide: boolean, eye: Eye): boolean {
  if (node.kind === "join" && (node.direction === "beside") === wide)
    return node.parts.some((part) => nodeGives(part, wide, eye));
  return nodeStandsOver(node, wide, eye);
}

/** Still longer when it is laid beside the join: at an end of a row, or all that lies side by side across it. */
function standsOver(bough: Bough, wide: boolean, eye: Eye): boolean {
  if (bough.kind === "leaf") return nodeStandsOver(bough.node, wide, eye);
  const part = (one: Bough) => standsOver(one, wide, eye);
  return bough.beside === wide ? endsOf(bough.parts).some(part) : bough.parts.every(part);
}

function nodeStandsOver(node: LayoutNode, wide: boolean, eye: Eye): boolean {
  switch (node.kind) {
    case "cloth":
      return true;
    case "join": {
      const part = (one: LayoutNode) => nodeStandsOver(one, wide, eye);
      const isAlong = (node.direction === "beside") === wide;
      return isAlong ? endsOf(node.parts).some(part) : node.parts.every(part);
    }
    case "piece":
      return spareOf(node, wide, eye) >= inch;
    case "unit":
    case "slab":
      return false;
  }
}

function endsOf<T>(parts: readonly T[]): readonly T[] {
  return [...parts.slice(0, 1), ...parts.slice(-1)];
}

/** A strip that gives several cells has nothing to spare that one of them could count on. */
function spareOf(node: PieceNode, wide: boolean, { pieces, job }: Eye): number {
  const piece = pieces.get(node.piece);
  if (piece === undefined || piece.keep === "whole" || node.copy !== undefined) return 0;
  const has = wide !== node.turned ? piece.width : piece.height;
  return has - (wide ? node.width : node.height) - 2 * job.seam;
}
