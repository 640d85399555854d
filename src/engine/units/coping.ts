import {
  type Cut,
  type Finished,
  type Length,
  length,
  share,
  subtract,
  times,
  toCut,
} from "../length/index.ts";

/** Two strips that bring a block to a width: one each side, finished and cut. */
export type Coping = { readonly finished: readonly [Finished, Finished]; readonly cut: readonly [Cut, Cut] };

/**
 * What to sew to both sides of a block that finishes at `now` so that it finishes at `target`: half of what is missing
 * each, on the ruler's `step`, the second strip taking what is odd. null: the block is too large, or fits as it is.
 * (target − now) ÷ 2 a side (Patchwork Times).
 */
export function copingStrips(
  now: Finished,
  target: Finished,
  { seam, step = length(1) }: { readonly seam: Length; readonly step?: Length },
): Coping | null {
  if (target <= now) return null;
  const [first, second] = share(subtract(target, now), 2, step);
  if (first === undefined || second === undefined) return null;
  return { finished: [first, second], cut: [toCut(first, seam), toCut(second, seam)] };
}

/** How many blocks of one width reach at least along `wide`, and how far over they are. */
export function blocksAlong(
  wide: Finished,
  block: Finished,
): { readonly count: number; readonly over: Finished } {
  const count = Math.ceil(wide / block);
  return { count, over: subtract<Finished>(times(block, count), wide) };
}
