import { type Filling, place, type Strategy } from "../filling.ts";
import type { Lie } from "../lies.ts";
import type { Face } from "../stock.ts";

/** One piece that fits the region as it is, or by a trim that is allowed. */
export const single: Strategy = (filling, width, height) => {
  const firm = cheapest(filling, filling.beside.firm(height), width, height);
  const loose = cheapest(filling, filling.beside.loose, width, height);
  const best = firm !== null && (loose === null || firm.cost <= loose.cost) ? firm : loose;
  return best === null ? null : place(filling, best.face, width, height);
};

type Offer = { readonly face: Face; readonly cost: number };

function cheapest(filling: Filling, lies: readonly Lie[], width: number, height: number): Offer | null {
  const { pool, random, twigs } = filling;
  let best: Face | null = null;
  // What would cost more than plain cloth is no use here: most of a long strip cut off for a short cell.
  let least = twigs.cloth(width, height).cost;
  for (const lie of lies) {
    if (width > lie.along || width < lie.leastAlong || height > lie.across || height < lie.leastAcross)
      continue;
    if (!pool.offers(lie.face, width, height)) continue;
    const cost = twigs.costOf(lie.face, width, height) - lie.lot.leftOut * random.next();
    if (cost >= least) continue;
    least = cost;
    best = lie.face;
  }
  return best === null ? null : { face: best, cost: least };
}
