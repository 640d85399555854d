import { type Filling, place, type Strategy } from "../filling.ts";
import type { Lie } from "../lies.ts";
import type { Face } from "../stock.ts";

/** One piece that fits the region as it is, or by a trim that is allowed. */
export const single: Strategy = (filling, width, height) => {
  const { beside, dense, pool } = filling;
  // What would cost more than plain cloth is no use here: most of a long strip cut off for a short cell.
  const best: Best = { face: null, cost: filling.twigs.costOfCloth(width, height) };
  if (!dense) {
    look(filling, beside.firm(height), { width, height, best });
    look(filling, beside.loose, { width, height, best });
  } else
    for (const { index } of pool.open) {
      look(filling, beside.ofLots[index]?.firm ?? [], { width, height, best });
      look(filling, beside.ofLots[index]?.loose ?? [], { width, height, best });
    }
  return best.face === null ? null : place(filling, best.face, width, height);
};

type Best = { face: Face | null; cost: number };
type Wanted = { readonly width: number; readonly height: number; readonly best: Best };

function look({ pool, random, twigs }: Filling, lies: readonly Lie[], { width, height, best }: Wanted): void {
  for (const lie of lies) {
    if (width > lie.along || width < lie.leastAlong || height > lie.across || height < lie.leastAcross)
      continue;
    if (!pool.offers(lie.face, width, height)) continue;
    const cost = twigs.costOf(lie.face, width, height) - lie.lot.leftOut * random.next();
    if (cost >= best.cost) continue;
    best.cost = cost;
    best.face = lie.face;
  }
}
