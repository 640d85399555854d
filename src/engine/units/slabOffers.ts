import { type Crumbs, cutArea, type Job, type SizedPiece } from "../cloth/index.ts";
import {
  type Area,
  areaOf,
  type Cut,
  inches,
  larger,
  roundDownTo,
  smaller,
  toFinished,
} from "../length/index.ts";
import { crumbsFor, rowsFor, singles, takenFrom } from "./heap.ts";
import { offerOf } from "./offer.ts";
import { slabSizes, slabsFrom, usableOfCrumbs, usableOfSquares, usableOfString } from "./slabs.ts";
import type { MadeSlab, Offer } from "./types.ts";

/** Narrower strips are strings (common practice). */
const stringWidth = inches(3, 2);

/**
 * So many slabs of each size: of crumbs, and of the bits that are not placed one by one, under the floor or strings.
 * Sizes are alternatives: what goes into one slab is gone for all. Their outsides lie on any grain.
 */
export function slabOffers(job: Job): readonly Offer[] {
  return slabSizes.flatMap((size) => [
    ...crumbsFor(job).flatMap((bag) => ofCrumbs(bag, size, job)),
    ...ofBits(size, job),
  ]);
}

function slab(size: Cut, job: Job): Pick<MadeSlab, "kind" | "width" | "height"> {
  const side = roundDownTo(toFinished(size, job.seam), job.step);
  return { kind: "slab", width: side, height: side };
}

function ofCrumbs(bag: Crumbs, size: Cut, job: Job): readonly Offer[] {
  const count = slabsFrom(usableOfCrumbs(areaOf(bag.area * bag.count)), size);
  if (count === 0) return [];
  const made = { ...slab(size, job), crumbs: bag.id };
  const offer = offerOf({ pattern: "slab", made, insideOnly: true, atMost: count }, [], job);
  return [{ ...offer, fabrics: [bag.fabric] }];
}

/** Slab after slab, each from the next bits of the heap until they are enough; the last one falls short and is none. */
function ofBits(size: Cut, job: Job): readonly Offer[] {
  const offers: Offer[] = [];
  let bits: SizedPiece[] = [];
  for (const bit of singles(rowsFor(job).filter((row) => isBit(row, job)))) {
    bits.push(bit);
    if (usableOf(bits, job) < size * size) continue;
    offers.push(ofThese(bits, size, job));
    bits = [];
  }
  return merged(offers);
}

/** May be cut up, and is not placed by itself. */
function isBit(piece: SizedPiece, { floor }: Job): boolean {
  const { kind, keep, width, height } = piece;
  if (keep === "whole" || sewn.includes(kind) || kind === "length") return false;
  return smaller(width, height) < (kind === "strip" ? larger(floor, stringWidth) : floor);
}

/** Never taken apart. */
const sewn: readonly SizedPiece["kind"][] = ["block", "part-block", "half-square-triangle"];

function usableOf(bits: readonly SizedPiece[], job: Job): Area {
  return areaOf(bits.reduce((sum, bit) => sum + usableOfBit(bit, job), 0));
}

function usableOfBit(bit: SizedPiece, { seam }: Job): Area {
  switch (bit.kind) {
    case "square":
      return usableOfSquares(smaller(bit.width, bit.height), seam);
    case "strip":
      return usableOfString(smaller(bit.width, bit.height), larger(bit.width, bit.height), seam);
    default:
      return usableOfCrumbs(cutArea(bit));
  }
}

function ofThese(bits: readonly SizedPiece[], size: Cut, job: Job): Offer {
  const made = { ...slab(size, job), pieces: takenFrom(bits) };
  return offerOf({ pattern: "slab", made, insideOnly: true }, [...new Set(bits)], job);
}

/** Slabs of the very same bits are one offer, as often as the heap gives them. */
function merged(offers: readonly Offer[]): readonly Offer[] {
  const each = new Map(offers.map((offer) => [JSON.stringify(offer.pieces), offer]));
  return [...each.values()];
}
