import type { Job } from "../cloth/index.ts";
import { copedOffers } from "./copedOffers.ts";
import { roundOffers } from "./roundOffers.ts";
import { sewnTriangleOffers } from "./sewnTriangleOffers.ts";
import { slabOffers } from "./slabOffers.ts";
import { squareInSquareOffers } from "./squareInSquareOffers.ts";
import { squareOffers } from "./squareOffers.ts";
import { stripOffers } from "./stripOffers.ts";
import { triangleOffers } from "./triangleOffers.ts";
import type { Offer } from "./types.ts";

/**
 * Which units her heap can give: each a ready rectangle, finished, on the ruler's step. They are alternatives: two may
 * take the same pieces, and `atMost` counts each as if it were the only one. Nothing kept back or given away is in
 * them, sewn pieces are never taken apart, blocks and half-square triangles are laid as they came. In the order of the
 * families here and of the heap; the same job gives the same offers.
 */
export function unitsFrom(job: Job): readonly Offer[] {
  return [
    ...sewnTriangleOffers(job),
    ...triangleOffers(job),
    ...squareInSquareOffers(job),
    ...squareOffers(job),
    ...stripOffers(job),
    ...roundOffers(job),
    ...copedOffers(job),
    ...slabOffers(job),
  ];
}
