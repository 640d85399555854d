import { finishedArea, type Job, type Piece, rowOf, type SizedPiece } from "../cloth/index.ts";
import { inches } from "../length/index.ts";
import { type ChosenUnit, without } from "../units/index.ts";
import type { Begun } from "./heapBeside.ts";
import { madeOfUnit } from "./offers.ts";
import { type Prices, pricesFor } from "./prices.ts";

/**
 * The heap as the solver sees it. All sizes are finished sizes in whole steps of the ruler; only what is left of a
 * strip that may be cut again is kept in exact lengths.
 */
export type Lot = {
  readonly index: number;
  /** What is sewn of leftovers before it is laid; `piece` is then the block that it makes. */
  readonly unit: ChosenUnit | null;
  readonly piece: SizedPiece;
  /** How many of it there are. A strip that may be cut again is a lot of its own, with its copy's number. */
  readonly count: number;
  readonly copy: number;
  /** Of its length so much is cut off already. */
  readonly taken: number;
  /** May be cut into several cells along its longer side. */
  readonly roll: boolean;
  /** How many cells one of it is sewn from: those of a unit, or a piece and the strips that bring it to the step. */
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
  readonly prices: Prices;
};

/** Smallest finished side outside sets of like pieces (design: max(1 in, floor − ½ in)). */
export function smallestCell(job: Job): number {
  return Math.max(inches(1), job.floor - inches(1, 2));
}

/**
 * Leaves out what never goes in: kept back, given away, lengths (they are plain cloth), crumbs, loose triangles, bits
 * under the floor. `units` are made first; what they take is not offered by itself. `begun` are strips beside the heap
 * that a part is left of.
 */
export function stockOf(
  job: Job,
  units: readonly ChosenUnit[] = [],
  begun: readonly Begun[] = [],
  prices: Prices = pricesFor(job.wishes),
): Stock {
  const step = job.step;
  const base = {
    smallest: Math.ceil(smallestCell(job) / step),
    step,
    allowances: 2 * job.seam,
    stepsPerInch: inches(1) / step,
    clothRoom: Math.floor((job.clothWidth - 2 * job.plainSeam) / step),
    prices,
  };
  const lots: Lot[] = [];
  for (const unit of units) {
    const loose = looseCost(unit, base, job);
    lots.push(lotFrom(madeOfUnit(unit, loose, job), lots.length));
  }
  const left = units.reduce((heap, { ways: [offer], count }) => without(heap, offer, count), job);
  for (const piece of left.pieces) {
    if (piece.kind === "crumbs" || piece.kind === "length" || piece.kind === "triangle") continue;
    if (piece.use === "keep-back" || piece.use === "give-away") continue;
    const given = begun.filter((one) => one.piece.id === piece.id).map(({ copy }) => copy);
    for (const made of lotsOf(piece, base, given)) lots.push(lotFrom(made, lots.length));
  }
  for (const { piece, copy, taken } of begun) {
    for (const made of lotsOf({ ...piece, count: 1 }, base))
      lots.push(lotFrom({ ...made, copy, taken }, lots.length));
  }
  return { ...base, lots, faces: lots.flatMap((lot) => lot.faces) };
}

/** What it would cost to leave out, one by one, all that goes into one unit. */
function looseCost({ ways: [offer] }: ChosenUnit, base: Base, job: Job): number {
  return offer.pieces.reduce((sum, { piece: id, count }) => {
    const piece = rowOf(job.pieces, id);
    if (piece === undefined || piece.kind === "crumbs") return sum;
    return sum + count * costOfLeavingOut(piece, finishedArea(piece, job.seam) / base.step ** 2, base);
  }, 0);
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

/** Strips that are cut up each have a number of their own; `given`: those of strips that are begun. */
function lotsOf(piece: SizedPiece, base: Base, given: readonly number[] = []): Made[] {
  const bounds = boundsOf(piece, base);
  const lying = waysToLie(piece, bounds, base.smallest);
  if (lying.length === 0) return [];
  const area = bounds.maxWidth * bounds.maxHeight;
  const roll = isCutUp(piece);
  const cells = 1 + (staysWhole(piece) ? offStepSides(piece, base) : 0);
  const leftOut = costOfLeavingOut(piece, area, base);
  const lot = { unit: null, piece, taken: 0, roll, cells, area, leftOut, lying };
  if (!roll) return [{ ...lot, copy: 0, count: piece.count }];
  const numbers = Array.from({ length: piece.count + given.length }, (_, at) => at + 1);
  const free = numbers.filter((copy) => !given.includes(copy)).slice(0, piece.count);
  return free.map((copy) => ({ ...lot, copy, count: 1 }));
}

/** What has a diagonal is not cut across. */
function isCutUp(piece: SizedPiece): boolean {
  return piece.keep === "cut" && piece.kind !== "half-square-triangle";
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
  const plainly = ((6 * base.prices.bit) / (1 + area / inch / 10)) * inch;
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
