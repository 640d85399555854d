import type { Job, Piece, SizedPiece } from "../cloth/index.ts";
import { inches } from "../length/index.ts";

/**
 * The heap as the solver sees it. All sizes are finished sizes in whole steps of the ruler; only what is left of a
 * strip that may be cut again is kept in exact lengths.
 */
export type Lot = {
  readonly index: number;
  readonly piece: SizedPiece;
  /** How many of it there are. A strip that may be cut again is a lot of its own, with its copy's number. */
  readonly count: number;
  readonly copy: number;
  /** May be cut into several cells along its longer side. */
  readonly roll: boolean;
  /** Two triangles, sewn. */
  readonly sewn: boolean;
  /** How many cells one of it is sewn from: two triangles, or a piece and the strips that bring it to the step. */
  readonly cells: number;
  /** Finished area of one, in steps². */
  readonly area: number;
  /** What it costs to leave one out, in steps² of plain cloth. */
  readonly leftOut: number;
  readonly faces: readonly Face[];
};

/** A lot as it lies: the sizes its cell may have. */
export type Face = {
  readonly lot: Lot;
  readonly turned: boolean;
  readonly maxWidth: number;
  readonly minWidth: number;
  readonly maxHeight: number;
  readonly minHeight: number;
  /** The side that may have any length: a strip's long side. */
  readonly along: "width" | "height" | null;
};

export type Stock = {
  readonly lots: readonly Lot[];
  readonly faces: readonly Face[];
  /** Smallest side of a cell, in steps. */
  readonly smallest: number;
  /** One step, and the two allowances of a cell, in exact lengths. */
  readonly step: number;
  readonly allowances: number;
  readonly stepsPerInch: number;
  /** The widest cell that one width of cloth gives whatever it is sewn to. */
  readonly clothRoom: number;
};

/** Smallest finished side outside sets of like pieces (design: max(1 in, floor − ½ in)). */
export function smallestCell(job: Job): number {
  return Math.max(inches(1), job.floor - inches(1, 2));
}

/**
 * Leaves out what never goes in: kept back, given away, lengths (they are plain cloth), crumbs, bits under the floor.
 * `placed` counts the pieces that the composition has put in their places already.
 */
export function stockOf(job: Job, placed: ReadonlyMap<string, number> = new Map()): Stock {
  const step = job.step;
  const base = {
    smallest: Math.ceil(smallestCell(job) / step),
    step,
    allowances: 2 * job.seam,
    stepsPerInch: inches(1) / step,
    clothRoom: Math.floor((job.clothWidth - 2 * job.plainSeam) / step),
  };
  const lots: Lot[] = [];
  for (const piece of job.pieces) {
    if (piece.kind === "crumbs" || piece.kind === "length") continue;
    if (piece.use === "keep-back" || piece.use === "give-away") continue;
    const left = { ...piece, count: piece.count - (placed.get(piece.id) ?? 0) };
    if (left.count <= 0) continue;
    for (const made of lotsOf(left, base, job)) lots.push(lotFrom(made, lots.length));
  }
  return { ...base, lots, faces: lots.flatMap((lot) => lot.faces) };
}

type Base = Omit<Stock, "lots" | "faces">;
type Lying = Omit<Face, "lot">;
type Made = Omit<Lot, "index" | "faces"> & { readonly lying: readonly Lying[] };

function lotFrom({ lying, ...facts }: Made, index: number): Lot {
  const faces: Face[] = [];
  const lot: Lot = { ...facts, index, faces };
  for (const one of lying) faces.push({ ...one, lot });
  return lot;
}

function lotsOf(piece: SizedPiece, base: Base, job: Job): Made[] {
  const bounds = piece.kind === "triangle" ? sewnPair(piece, base, job) : boundsOf(piece, base);
  if (bounds === null) return [];
  const lying = waysToLie(piece, bounds, base.smallest);
  if (lying.length === 0) return [];
  const area = bounds.maxWidth * bounds.maxHeight;
  const roll = isCutUp(piece);
  const sewn = piece.kind === "triangle";
  const cells = sewn ? 2 : 1 + (staysWhole(piece) ? offStepSides(piece, base) : 0);
  const lot = { piece, roll, sewn, cells, area, leftOut: costOfLeavingOut(piece, area, base), lying };
  if (!roll) return [{ ...lot, copy: 0, count: sewn ? Math.floor(piece.count / 2) : piece.count }];
  return Array.from({ length: piece.count }, (_, copy) => ({ ...lot, copy: copy + 1, count: 1 }));
}

/** What has a diagonal or is sewn from several is not cut across. */
function isCutUp(piece: SizedPiece): boolean {
  return piece.keep === "cut" && piece.kind !== "triangle" && piece.kind !== "half-square-triangle";
}

function staysWhole(piece: SizedPiece): boolean {
  return piece.keep === "whole" || (piece.kind === "half-square-triangle" && piece.keep === "cut");
}

function offStepSides(piece: SizedPiece, base: Base): number {
  return [piece.width, piece.height].filter((side) => (side - base.allowances) % base.step !== 0).length;
}

type Bounds = Pick<Face, "maxWidth" | "minWidth" | "maxHeight" | "minHeight" | "along">;

/** The cells a piece may fill as it lies, before turning. */
function boundsOf(piece: SizedPiece, base: Base): Bounds {
  const along = alongOf(piece);
  const width = sideBounds(piece, piece.width, base, along === "width");
  const height = sideBounds(piece, piece.height, base, along === "height");
  return { maxWidth: width.max, minWidth: width.min, maxHeight: height.max, minHeight: height.min, along };
}

function alongOf(piece: SizedPiece): Face["along"] {
  const free = isCutUp(piece) || (piece.kind === "strip" && piece.keep === "trim");
  if (!free) return null;
  return piece.width > piece.height ? "width" : "height";
}

function sideBounds(piece: SizedPiece, side: number, base: Base, any: boolean): { max: number; min: number } {
  const most = side - base.allowances;
  const max = Math.floor(most / base.step);
  if (any) return { max, min: base.smallest };
  if (staysWhole(piece)) return whole(most, base);
  // Trimmed on one side alone a half-square triangle would lose its diagonal's corner: it is floored, no more.
  if (piece.kind === "half-square-triangle") return { max, min: max };
  return { max, min: Math.max(base.smallest, Math.ceil((most - trimLimit(side)) / base.step)) };
}

// A whole piece that is off the ruler's step gets a coping strip beside it, which takes the difference.
function whole(most: number, base: Base): { max: number; min: number } {
  if (most < base.smallest * base.step) return { max: 0, min: 0 };
  const steps = most % base.step === 0 ? most / base.step : Math.ceil(most / base.step) + base.smallest;
  return { max: steps, min: steps };
}

/** Design: at most ½ in or 10 % of that side, in all. */
function trimLimit(side: number): number {
  return Math.min(inches(1, 2), side / 10);
}

/** Two equal right triangles sewn along the long side: finishes at leg − s (2 + √2) (trade-facts: 7/8 in at ¼ in). */
function sewnPair(piece: SizedPiece, base: Base, job: Job): Bounds | null {
  if (piece.width !== piece.height || piece.count < 2) return null;
  const side = Math.floor((piece.width - job.seam * (2 + Math.SQRT2)) / base.step);
  return { maxWidth: side, minWidth: side, maxHeight: side, minHeight: side, along: null };
}

function waysToLie(piece: SizedPiece, bounds: Bounds, smallest: number): Lying[] {
  const upright: Lying = { turned: false, ...bounds };
  const square = bounds.maxWidth === bounds.maxHeight && bounds.along === null;
  const ways = piece.direction === "one-way" || square ? [upright] : [upright, turn(upright)];
  return ways.filter(
    (face) =>
      Math.min(face.maxWidth, face.maxHeight) >= smallest &&
      face.minWidth <= face.maxWidth &&
      face.minHeight <= face.maxHeight,
  );
}

function turn(face: Lying): Lying {
  return {
    turned: true,
    maxWidth: face.maxHeight,
    minWidth: face.minHeight,
    maxHeight: face.maxWidth,
    minHeight: face.minWidth,
    along: face.along === null ? null : face.along === "width" ? "height" : "width",
  };
}

/** Little bits before big pieces; her own marks before both. In steps². */
function costOfLeavingOut(piece: Piece, area: number, base: Base): number {
  const inch = base.stepsPerInch ** 2;
  const plainly = (6 / (1 + area / inch / 10)) * inch;
  switch (piece.use) {
    case "must":
      return plainly + 400 * inch;
    case "first":
      return plainly * 3 + 4 * inch + area * 0.3;
    case "if-needed":
      return -area * 0.6;
    case "edge":
      return plainly * 0.3;
    case "yes":
    case "keep-back":
    case "give-away":
      return plainly;
  }
}
