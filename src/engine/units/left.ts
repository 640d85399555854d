import type { Crumbs, Job, Piece } from "../cloth/index.ts";
import { areaOf, toCut } from "../length/index.ts";
import { crumbsUsedFor } from "./slabs.ts";
import type { Offer } from "./types.ts";

/** The heap once so many of a unit are made of it; rows that are used up are gone. */
export function without(job: Job, offer: Offer, count: number): Job {
  const used = new Map(offer.pieces.map((taken) => [taken.piece, taken.count * count]));
  const pieces = job.pieces.flatMap((piece): readonly Piece[] => {
    if (piece.kind === "crumbs") return crumbsWithout(piece, offer, { count, job });
    const left = piece.count - (used.get(piece.id) ?? 0);
    return left > 0 ? [{ ...piece, count: left }] : [];
  });
  return { ...job, pieces };
}

type Times = { readonly count: number; readonly job: Job };

function crumbsWithout(bag: Crumbs, { made }: Offer, { count, job }: Times): readonly Crumbs[] {
  if (made.kind !== "slab" || made.crumbs !== bag.id) return [bag];
  const left = bag.area * bag.count - count * crumbsUsedFor(toCut(made.width, job.seam));
  return left > 0 ? [{ ...bag, area: areaOf(left), count: 1 }] : [];
}
