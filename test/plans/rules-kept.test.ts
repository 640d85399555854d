import { describe, expect, it } from "vitest";
import { type Style, styles } from "../../src/engine/back/index.ts";
import type { Job } from "../../src/engine/cloth/index.ts";
import { type Cut, cut, length } from "../../src/engine/length/index.ts";
import { defaultEffort, makePlan } from "../../src/engine/plan/index.ts";
import { heaps, jobOf } from "./heaps.ts";
import { checkOf, type Rule, rules } from "./rules.ts";

// No plan of these heaps breaks one of them; `npm run bench:rules` counts more heaps, and contrast too.
const kept: readonly Rule[] = rules.filter((rule) => rule !== "contrast");

const worked = heaps.filter((heap) => /r\.(3|5)-s[12]$/.test(heap));

describe.each(worked)("what she would say no to, in plans of %s", (heap) => {
  const job = jobOf(heap, "weekend");

  it.each(styles)("as %s: none of it", (style: Style) => {
    const plan = makePlan(job, { style, seed: 1, effort: 400 });
    expect(kept.flatMap((rule) => checkOf[rule](plan))).toEqual([]);
  });
});

describe("where her lengths are nearly used up, and what is bought is of another fabric", () => {
  it.each([
    ["cross", 0.57],
    ["chunks", 0.62],
  ] as const)("as %s, with %f of their length: none of it either", (style, share) => {
    const job = withShorter(jobOf("real-r.5-s1", "weekend"), share);
    const plan = makePlan(job, { style, seed: 1, effort: defaultEffort(job, 1) });
    expect(rules.flatMap((rule) => checkOf[rule](plan))).toEqual([]);
  });
});

function withShorter(job: Job, share: number): Job {
  const shorter = (height: Cut) => cut(length(Math.floor((height * share) / job.step) * job.step));
  const pieces = job.pieces.map((piece) =>
    piece.kind === "length" ? { ...piece, height: shorter(piece.height) } : piece,
  );
  return { ...job, pieces };
}
