import { backFor, extraFor } from "../../../src/engine/back/index.ts";
import { checkDraft, type Job } from "../../../src/engine/cloth/index.ts";
import { inches } from "../../../src/engine/length/index.ts";
import { readLeftovers } from "../../../src/files/index.ts";

/** The job of a table of leftovers and a 60 × 80 in top on a frame; the same in the browser and beside it. */
export function jobOf(table: string): Job {
  const { pieces } = readLeftovers(new TextEncoder().encode(table), "in");
  const size = { width: inches(60), height: inches(80) };
  const extra = extraFor("frame", "in");
  const top = { ...size, method: "frame", extra } as const;
  const checked = checkDraft({
    unit: "in",
    top,
    back: backFor(size, extra),
    plain: { name: "plain" },
    pieces,
  });
  if (!checked.ok) throw new Error(JSON.stringify(checked.error));
  return checked.value.job;
}
