import type { Strategy } from "../filling.ts";

/** Cuts a large region in two, so that each part finds thicknesses of its own. */
export const split: Strategy = (filling, width, height) => {
  const { random, stock, twigs } = filling;
  const beside = random.next() < width / (width + height);
  const long = beside ? width : height;
  const least = Math.max(stock.smallest, Math.round(long * 0.25));
  if (long < 2 * least) return null;
  const at = least + random.below(long - 2 * least + 1);
  if (beside) return twigs.join(true, [filling.fill(at, height), filling.fill(width - at, height)]);
  return twigs.join(false, [filling.fill(width, at), filling.fill(width, height - at)]);
};
