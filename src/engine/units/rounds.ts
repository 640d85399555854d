import { add, type Cut, type Length, type Size, subtract, times } from "../length/index.ts";

/** Where a log goes on. */
export const logSides = ["top", "right", "bottom", "left"] as const;
export type LogSide = (typeof logSides)[number];

/** Round and round, or two across from each other and then the two between them. */
export const roundOrders = ["log-cabin", "courthouse-steps"] as const;
export type RoundOrder = (typeof roundOrders)[number];

export type Log = { readonly side: LogSide; readonly width: Cut; readonly length: Cut };

const sidesOf: Readonly<Record<RoundOrder, readonly [LogSide, LogSide, LogSide, LogSide]>> = {
  "log-cabin": logSides,
  "courthouse-steps": ["top", "bottom", "left", "right"],
};

/**
 * Strips sewn round a centre one after the other, each as long as the side it goes on. `widths`: the logs' cut widths in
 * sewing order, equal or not; four make a round. Gives each log's cut length and what the block measures unfinished. Exact.
 */
export function roundsAbout(
  centre: Size<Cut>,
  widths: readonly Cut[],
  { seam, order }: { readonly seam: Length; readonly order: RoundOrder },
): { readonly logs: readonly Log[]; readonly unfinished: Size<Cut> } {
  let block = centre;
  const logs = widths.map((width, index): Log => {
    const side = sidesOf[order][index % 4] ?? "top";
    const across = side === "top" || side === "bottom";
    const log = { side, width, length: across ? block.width : block.height };
    const more = subtract(width, times(seam, 2));
    block = across
      ? { width: block.width, height: add(block.height, more) }
      : { width: add(block.width, more), height: block.height };
    return log;
  });
  return { logs, unfinished: block };
}
