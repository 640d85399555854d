import { colourDifference, type Fabric, isUndyed, type Job, rowOf } from "../cloth/index.ts";
import { inches, smaller } from "../length/index.ts";
import { fourPatterns } from "./fourHalfSquares.ts";
import { roundOffers } from "./roundOffers.ts";
import { sewnTriangleOffers } from "./sewnTriangleOffers.ts";
import { slabOffers } from "./slabOffers.ts";
import { squareInSquareOffers } from "./squareInSquareOffers.ts";
import { squareOffers } from "./squareOffers.ts";
import { stripOffers } from "./stripOffers.ts";
import { triangleOffers } from "./triangleOffers.ts";
import type { Made, Offer, UnitWish } from "./types.ts";

/** Units of one make: what a heap gives, and how gladly she would make one; 0: not at all. */
export type Family = {
  readonly offers: (heap: Job) => readonly Offer[];
  readonly gladly: (offer: Offer, heap: Job) => number;
};

/**
 * The makes in the order in which a quilter thinks of them: what is sewn already, then triangles, squares, strips,
 * blocks, and what is left in crumbs. Where every leftover is to go in and the back's size is all that is known, units
 * would only be in the way: then triangles alone, in pairs.
 */
export function familiesFor(job: Job, { allOver, seed }: UnitWish): readonly Family[] {
  const pairs: Family = { offers: triangleOffers, gladly: pairOf };
  if (allOver && job.time === "any" && job.top === null) return [pairs];
  const pattern = fourPatterns[(seed - 1) % fourPatterns.length] ?? "pinwheel";
  return [
    { offers: sewnTriangleOffers, gladly: (offer, heap) => fourOf(offer, pattern, heap) },
    { offers: triangleOffers, gladly: (offer, heap) => ofTwoFabrics(offer, pattern, heap) },
    { offers: squareInSquareOffers, gladly: contrastWithin },
    pairs,
    { offers: squareOffers, gladly: ofSquares },
    { offers: stripOffers, gladly: ofStrips },
    { offers: roundOffers, gladly: aroundBlock },
    { offers: slabOffers, gladly: ofCrumbs },
  ];
}

// ---- How well fabrics stand apart

/** CIEDE2000 under which two fabrics read as one at a glance. */
const plainlyTwo = 10;

/** CIEDE2000 of two fabrics; as apart as can be told at a glance where a colour is not known. */
function apart(one: string, other: string, { fabrics }: Job): number {
  if (one === other) return 0;
  const [a, b] = [one, other].map((id) => fabrics.find((fabric) => fabric.id === id)).map(labOf);
  return a === null || a === undefined || b === null || b === undefined ? 20 : colourDifference(a, b);
}

function labOf(fabric: Fabric | undefined) {
  return fabric === undefined || isUndyed(fabric) ? null : (fabric.colours[0]?.lab ?? null);
}

/** The first fabric against each of the others: the least of it, 0 where it reads as one fabric. */
function contrastWithin({ pieces }: Offer, heap: Job): number {
  const [first, ...others] = pieces.map(({ piece }) => fabricOfRow(piece, heap));
  if (first === undefined || others.length === 0) return 0;
  return told(Math.min(...others.map((other) => apart(first, other, heap))));
}

function told(difference: number): number {
  return difference >= plainlyTwo ? difference : 0;
}

function fabricOfRow(id: string, { pieces }: Job): string {
  return rowOf(pieces, id)?.fabric ?? "";
}

/** The least that neighbours in a row or a strip set stand apart. */
function contrastAlong({ made }: Offer, heap: Job): number {
  const fabrics = made.kind === "join" ? made.parts.flatMap((part) => fabricIn(part, heap)) : [];
  const edges = fabrics.slice(1).map((fabric, index) => apart(fabrics[index] ?? fabric, fabric, heap));
  return edges.length === 0 ? 0 : told(Math.min(...edges));
}

function fabricIn(part: Made, heap: Job): readonly string[] {
  return part.kind === "piece" ? [fabricOfRow(part.piece, heap)] : [];
}

// ---- Triangles

/** Four that are sewn already: of one row, or of two that stand apart. */
function fourOf(offer: Offer, pattern: string, heap: Job): number {
  if (offer.pattern !== pattern) return 0;
  const alike = offer.pieces.length === 1;
  return alike ? 100 : contrastWithin(offer, heap);
}

/** Four pairs about a centre before an hourglass, that before a single pair; of fabrics that stand apart. */
function ofTwoFabrics(offer: Offer, pattern: string, heap: Job): number {
  const contrast = contrastWithin(offer, heap);
  if (contrast === 0) return 0;
  if (offer.pattern === pattern) return 400 + contrast;
  if (offer.pattern === "hourglass") return 200 + contrast;
  return offer.pattern === "half-square-triangle" ? contrast : 0;
}

/** Of one row first, as most heaps have them. */
function pairOf(offer: Offer): number {
  if (offer.pattern !== "half-square-triangle") return 0;
  return offer.pieces.length === 1 ? 2 : 1;
}

// ---- Squares, strips, blocks

const smallSquare = inches(9, 2);
const leastInRow = 4;

/** Small ones: chequered in two fabrics, or else a row in which no two neighbours are alike. */
function ofSquares(offer: Offer, heap: Job): number {
  const { made, pattern } = offer;
  const [first] = made.kind === "join" ? made.parts : [];
  if (first === undefined || smaller(first.width, first.height) > smallSquare) return 0;
  if (pattern === "four-patch") {
    const contrast = contrastWithin(offer, heap);
    return contrast === 0 ? 0 : 100 + contrast;
  }
  const long = made.kind === "join" && made.parts.length >= leastInRow;
  return long && contrastAlong(offer, heap) > 0 ? made.parts.length : 0;
}

const shortStrip = inches(20);
const leastDeep = inches(4);

/** Short ones, three or more, like fabrics apart; the more of them, the better, and then the more they stand apart. */
function ofStrips(offer: Offer, heap: Job): number {
  const { made, width, height } = offer;
  if (made.kind !== "join" || made.parts.length < 3 || smaller(width, height) < leastDeep) return 0;
  const long = made.direction === "beside" ? height : width;
  const contrast = contrastAlong(offer, heap);
  return long > shortStrip || contrast === 0 ? 0 : made.parts.length * 100 + contrast;
}

/** Of a strip round a block so much should show; the rest is cut off. */
const mostOfALog = 0.7;

function aroundBlock(offer: Offer, heap: Job): number {
  const rows = offer.pieces.map(({ piece }) => rowOf(heap.pieces, piece));
  const centre = rows.find((row) => row?.kind === "block");
  if (centre === undefined) return 0;
  const logs = rows.flatMap((row) => (row === undefined || row === centre ? [] : [row.fabric]));
  if (told(Math.min(...logs.map((log) => apart(centre.fabric, log, heap)))) === 0) return 0;
  const cutArea = offer.pieces.reduce((sum, { piece, count }) => sum + count * areaOfRow(piece, heap), 0);
  const shown = (offer.width * offer.height) / cutArea;
  return shown >= mostOfALog ? shown : 0;
}

function areaOfRow(id: string, { pieces }: Job): number {
  const row = rowOf(pieces, id);
  return row === undefined || row.kind === "crumbs" ? 0 : row.width * row.height;
}

// ---- Crumbs

/** Several of one size, the larger the better; a single one the smaller the better, as it asks for fewer bits. */
function ofCrumbs({ atMost, width }: Offer): number {
  return atMost >= 2 ? 1000 + width / inches(1) : 500 - width / inches(1);
}
