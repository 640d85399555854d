import { finishedArea, type Job, type Piece, type SizedPiece } from "../cloth/index.ts";
import type { Finished, Size } from "../length/index.ts";
import { joinsFor, slabJoins } from "../work/index.ts";
import { type Family, familiesFor } from "./families.ts";
import { smallestAlone } from "./heap.ts";
import { without } from "./left.ts";
import type { ChosenUnit, Offer, UnitWish } from "./types.ts";

/** Of the pieced part so much may be units: what is sewn before it is laid needs loose pieces to close its gaps. */
const mostShare = 0.6;

/**
 * The units a practised quilter would make of this heap before she lays anything out, within her time. What one takes
 * is gone for the next. The same job and wish give the same units.
 */
export function chooseUnits(job: Job, wish: UnitWish): readonly ChosenUnit[] {
  const chosen: ChosenUnit[] = [];
  let bench: Bench = { heap: job, joins: timeFor(job), area: areaFor(job, wish) };
  for (const family of familiesFor(job, wish)) {
    for (let next = best(family, bench, wish); next !== null; next = best(family, bench, wish)) {
      chosen.push(next);
      bench = taken(bench, next);
    }
  }
  return chosen;
}

/** Where there are too few loose pieces to fill the rest, units may: else it would be plain. */
function areaFor({ pieces, seam }: Job, { rooms }: UnitWish): number {
  const all = areaOfAll(rooms);
  const loose = pieces.reduce(
    (sum, piece) => sum + (isLoose(piece) ? piece.count * finishedArea(piece, seam) : 0),
    0,
  );
  return Math.max(mostShare * all, all - loose);
}

function isLoose(piece: Piece): piece is SizedPiece {
  return (
    !["crumbs", "triangle", "length"].includes(piece.kind) && !["keep-back", "give-away"].includes(piece.use)
  );
}

/** Half of her time, or what loose pieces would leave of it: a heap of nothing but crumbs is sewn into slabs. */
function timeFor(job: Job): number {
  const limit = joinsFor(job);
  const loose = job.pieces.reduce((sum, { kind, count }) => sum + (kind === "crumbs" ? 0 : count), 0);
  return Math.max(limit / 2, 0.8 * limit - loose);
}

/** What is left of the heap, of her time and of the room. */
type Bench = { readonly heap: Job; readonly joins: number; readonly area: number };

function taken({ heap, joins, area }: Bench, { ways: [offer], count }: ChosenUnit): Bench {
  return {
    heap: without(heap, offer, count),
    joins: joins - count * joinsOf(offer),
    area: area - count * offer.width * offer.height,
  };
}

/** Seams inside one; a slab counts by its area. */
export function joinsOf(offer: Offer): number {
  return offer.pattern === "slab" ? slabJoins(offer) : offer.joins;
}

/** The one she would make most gladly, as often as there is cloth, time and room for it. */
function best(family: Family, bench: Bench, { rooms }: UnitWish): ChosenUnit | null {
  const offers = family.offers(bench.heap).filter((offer) => isWelcome(offer, bench.heap));
  let found: ChosenUnit | null = null;
  let gladness = 0;
  for (const offer of offers) {
    const count = timesOf(offer, bench);
    const glad = family.gladly(offer, bench.heap);
    if (glad <= gladness || count === 0 || !fitsAny(offer, rooms, bench.heap)) continue;
    gladness = glad;
    found = { ways: [offer, ...onItsSide(offer, offers)], count };
  }
  return found;
}

function timesOf(offer: Offer, { joins, area }: Bench): number {
  const inTime = joinsOf(offer) > 0 ? Math.floor(joins / joinsOf(offer)) : Number.POSITIVE_INFINITY;
  return Math.max(0, Math.min(offer.atMost, inTime, Math.floor(area / (offer.width * offer.height))));
}

/** What she keeps for need alone is not sewn into anything. */
function isWelcome({ pieces, made }: Offer, { pieces: rows }: Job): boolean {
  const crumbs = made.kind === "slab" && made.crumbs !== undefined ? [made.crumbs] : [];
  const ids = [...crumbs, ...pieces.map(({ piece }) => piece)];
  return ids.every((piece) => rows.find(({ id }) => id === piece)?.use !== "if-needed");
}

function onItsSide(offer: Offer, offers: readonly Offer[]): readonly Offer[] {
  if (offer.width === offer.height) return [];
  const key = JSON.stringify(offer.pieces);
  return offers
    .filter(({ width, height }) => width === offer.height && height === offer.width)
    .filter(({ pattern, pieces }) => pattern === offer.pattern && JSON.stringify(pieces) === key)
    .slice(0, 1);
}

/** It fills a room from side to side, or leaves enough beside it for a cell. */
function fitsAny(offer: Offer, rooms: readonly Size<Finished>[], job: Job): boolean {
  const least = smallestAlone(job);
  const leaves = (rest: number) => rest === 0 || rest >= least;
  return (
    Math.min(offer.width, offer.height) >= least &&
    rooms.some(({ width, height }) => leaves(width - offer.width) && leaves(height - offer.height))
  );
}

function areaOfAll(rooms: readonly Size<Finished>[]): number {
  return rooms.reduce((sum, { width, height }) => sum + width * height, 0);
}
