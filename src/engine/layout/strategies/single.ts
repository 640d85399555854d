import { place, type Strategy } from "../filling.ts";
import type { Face } from "../stock.ts";

/** One piece that fits the region as it is, or by a trim that is allowed. */
export const single: Strategy = (filling, width, height) => {
  let best: Face | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const face of filling.faces) {
    if (width > face.maxWidth || width < face.minWidth) continue;
    if (height > face.maxHeight || height < face.minHeight) continue;
    if (!filling.pool.offers(face, width, height)) continue;
    const cost = filling.twigs.leaf(face, width, height).cost - face.lot.leftOut * filling.random.next();
    if (cost < least) {
      least = cost;
      best = face;
    }
  }
  return best === null ? null : place(filling, best, width, height);
};
