import type { Site } from "./site.ts";
import type { Sketch, SketchJoin } from "./sketch.ts";
import { isSound } from "./sound.ts";

/**
 * The sketch with its long seams moved to where they may lie: 3 in off both centre lines and 1½ in off the top's
 * outline. One part of a join gives what another takes; blocks keep their size. A seam that can't be moved stays.
 */
export function withSeamsMoved(sketch: Sketch, site: Site): Sketch {
  let best = sketch;
  for (let turn = 0; turn < mostTurns; turn++) {
    const wrong = wrongLongSeams(best, site);
    if (wrong === 0) break;
    const next = firstBetter(best, site, wrong);
    if (next === null) break;
    best = next;
  }
  return best;
}

const mostTurns = 8;

function firstBetter(sketch: Sketch, site: Site, wrong: number): Sketch | null {
  for (const by of stepsOf(site)) {
    for (const other of shiftings(sketch, by)) {
      if (wrongLongSeams(other, site) < wrong && isSound(other, site)) return other;
    }
  }
  return null;
}

/** Half an inch at a time, up to 6½: the centre's strip is 6 in wide. */
function stepsOf({ inch }: Site): number[] {
  return Array.from({ length: 13 }, (_, at) => Math.ceil(((at + 1) * inch) / 2));
}

/** Every sketch in which two parts of one join have shared out `by` steps otherwise. */
function* shiftings(sketch: Sketch, by: number): Generator<Sketch> {
  if (sketch.kind !== "join") return;
  for (const [at, part] of sketch.parts.entries()) {
    for (const other of sketch.parts.keys()) {
      const shifted = at === other ? null : withShifted(sketch, [at, other], by);
      if (shifted !== null) yield shifted;
    }
    for (const inner of shiftings(part, by)) yield { ...sketch, parts: sketch.parts.with(at, inner) };
  }
}

function withShifted(join: SketchJoin, [grows, gives]: readonly [number, number], by: number): Sketch | null {
  const [one, other] = [join.parts[grows], join.parts[gives]];
  if (one === undefined || other === undefined) return null;
  const [larger, smaller] = [resized(one, join.beside, by), resized(other, join.beside, -by)];
  if (larger === null || smaller === null) return null;
  return { ...join, parts: join.parts.with(grows, larger).with(gives, smaller) };
}

/** Longer or shorter by so much, left to right (`wide`) or top to bottom; null: a block is in the way. */
function resized(sketch: Sketch, wide: boolean, by: number): Sketch | null {
  const size = wide ? { width: sketch.width + by } : { height: sketch.height + by };
  if (sketch.kind === "block" || (sketch.kind === "cloth" && sketch.role === "coping")) return null;
  if (sketch.kind !== "join") return { ...sketch, ...size };
  if (sketch.beside !== wide) {
    const parts = sketch.parts.map((part) => resized(part, wide, by));
    const whole = parts.filter((part) => part !== null);
    return whole.length === parts.length ? { ...sketch, ...size, parts: whole } : null;
  }
  const largest = sketch.parts.findLastIndex(
    (part) => part.kind === "pieced" || (part.kind === "cloth" && part.role === "plain"),
  );
  const part = sketch.parts[largest];
  const other = part === undefined ? null : resized(part, wide, by);
  return other === null ? null : { ...sketch, ...size, parts: sketch.parts.with(largest, other) };
}

type Seam = { readonly upright: boolean; readonly at: number; readonly from: number; readonly to: number };

function wrongLongSeams(sketch: Sketch, site: Site): number {
  const wrong = seamsIn(sketch, 0, 0).filter((seam) => isWrong(seam, site));
  const long = inOneLine(wrong).filter(
    ({ upright, from, to }) => 2 * (to - from) >= (upright ? site.height : site.width),
  );
  return long.length;
}

function seamsIn(sketch: Sketch, x: number, y: number): Seam[] {
  if (sketch.kind !== "join") return [];
  const { beside, width, height } = sketch;
  let along = 0;
  return sketch.parts.flatMap((part, index) => {
    const seam = beside
      ? { upright: true, at: x + along, from: y, to: y + height }
      : { upright: false, at: y + along, from: x, to: x + width };
    const inner = beside ? seamsIn(part, x + along, y) : seamsIn(part, x, y + along);
    along += beside ? part.width : part.height;
    return index === 0 ? inner : [seam, ...inner];
  });
}

/** Would a long seam be wrong here? */
function isWrong({ upright, at }: Seam, site: Site): boolean {
  return upright
    ? isWrongAt(at, site.width, site.outlineX, site.inch)
    : isWrongAt(at, site.height, site.outlineY, site.inch);
}

/** Is `at` too near the middle of `whole` for a long seam, or too near the outline, which lies `outline` in from both ends? */
export function isWrongAt(at: number, whole: number, outline: number | null, inch: number): boolean {
  if (Math.abs(at - whole / 2) < 3 * inch) return true;
  if (outline === null) return false;
  return Math.min(Math.abs(at - outline), Math.abs(whole - outline - at)) < 1.5 * inch;
}

function inOneLine(seams: readonly Seam[]): Seam[] {
  const lines: Seam[] = [];
  for (const seam of [...seams].sort((one, other) => one.at - other.at || one.from - other.from)) {
    const before = lines.findIndex(
      ({ upright, at, to }) => upright === seam.upright && at === seam.at && to >= seam.from,
    );
    const line = lines[before];
    if (line === undefined) lines.push(seam);
    else lines[before] = { ...line, to: Math.max(line.to, seam.to) };
  }
  return lines;
}
