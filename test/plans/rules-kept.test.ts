import { describe, expect, it } from "vitest";
import { type Style, styles } from "../../src/engine/back/index.ts";
import { makePlan } from "../../src/engine/plan/index.ts";
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
