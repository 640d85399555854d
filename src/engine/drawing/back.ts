import type { Fabric, Job } from "../cloth/index.ts";
import { cut, type Size, toFinished } from "../length/index.ts";
import { drawPlan } from "./draw.ts";
import type { Drawing } from "./types.ts";

export type PlainBack = Pick<Job, "unit" | "seam" | "plainSeam"> & {
  /** Edge to edge. */
  readonly back: Size;
  readonly top: Size | null;
  /** What it is of; null: nothing is chosen yet. */
  readonly fabric: Fabric | null;
};

/**
 * A back for which nothing is planned yet: one cloth and the top's outline. `null` where there is nothing between its
 * seams to draw. A top that is larger than its back is left out.
 */
export function drawPlainBack({ back, top, fabric, ...job }: PlainBack): Drawing | null {
  const width = toFinished(cut(back.width), job.seam);
  const height = toFinished(cut(back.height), job.seam);
  if (width <= 0 || height <= 0) return null;
  const fits = top !== null && top.width <= back.width && top.height <= back.height;
  return drawPlan({
    ...job,
    back,
    top: fits ? top : null,
    fabrics: fabric === null ? [] : [fabric],
    pieces: [],
    layout: { kind: "cloth", role: "plain", fabric: fabric?.id ?? "", source: "buy", width, height },
  });
}
