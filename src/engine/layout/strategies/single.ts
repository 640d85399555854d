import { place, type Strategy } from "../filling.ts";
import type { Lie } from "../lies.ts";
import type { Face } from "../stock.ts";

/** One piece that fits the region as it is, or by a trim that is allowed. */
export const single: Strategy = (filling, width, height) => {
  let best: Face | null = null;
  let least = Number.POSITIVE_INFINITY;
  const consider = (lie: Lie) => {
    if (width > lie.along || width < lie.leastAlong) return;
    if (!filling.pool.offers(lie.face, width, height)) return;
    const cost = filling.twigs.costOf(lie.face, width, height) - lie.lot.leftOut * filling.random.next();
    if (cost < least) {
      least = cost;
      best = lie.face;
    }
  };
  for (const lie of filling.beside.firm(height)) consider(lie);
  for (const lie of filling.beside.loose) {
    if (height <= lie.across && height >= lie.leastAcross) consider(lie);
  }
  return best === null ? null : place(filling, best, width, height);
};
