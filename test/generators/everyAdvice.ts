import type { Advice, AdviceKind, Mend, Where } from "../../src/engine/advice/index.ts";
import { areaOf, inches } from "../../src/engine/length/index.ts";
import type { Plan } from "../../src/engine/plan/index.ts";

/** Advice of each kind, in each of its ways; the compiler names a kind that is missing. */
export function everyAdvice(plan: Pick<Plan, "pieces" | "steps">): readonly Advice[] {
  const many: Where = {
    cells: [],
    pieces: plan.pieces.map(({ id }) => id),
    steps: plan.steps.map(({ id }) => id),
  };
  const one: Where = { cells: [], pieces: many.pieces.slice(0, 1), steps: many.steps.slice(0, 1) };
  const nowhere: Where = { cells: [], pieces: [], steps: [] };
  const byKind: { readonly [K in AdviceKind]: readonly Extract<Advice, { readonly kind: K }>[] } = {
    contrast: [
      { kind: "contrast", now: 0.71, swapped: 0.71, most: 0.85, mend: null, where: many },
      { kind: "contrast", now: 0.71, swapped: 0.8, most: 1, mend, where: one },
      {
        kind: "contrast",
        now: 0.71,
        swapped: 0.8,
        most: 0.8,
        mend: { ...mend, instead: "plain" },
        where: one,
      },
      {
        kind: "contrast",
        now: 0.71,
        swapped: 0.8,
        most: 0.9,
        mend: { ...mend, hue: "orange", cells: 1 },
        where: one,
      },
    ],
    bleeding: [true, false].map((small) => ({ kind: "bleeding", small, where: one })),
    unwashed: [
      { kind: "unwashed", bought: [{ fabric: "plain", length: inches(99) }], where: nowhere },
      { kind: "unwashed", bought: [], where: many },
    ],
    weights: [[], ["flannel"], ["flannel", "linen"]].map((cloths) => ({
      kind: "weights",
      cloths,
      where: many,
    })),
    "dark-beside-light": [{ kind: "dark-beside-light", where: many }],
    "dark-under-top": [
      { kind: "dark-under-top", pale: null, where: one },
      { kind: "dark-under-top", pale: 0.4, where: one },
    ],
    "not-upright": [{ kind: "not-upright", where: one }],
    "stripes-sideways": [{ kind: "stripes-sideways", where: one }],
    "print-cut-off": [{ kind: "print-cut-off", where: nowhere }],
    "load-sideways": [{ kind: "load-sideways", where: one }],
  };
  return Object.values(byKind).flat();
}

const mend: Mend = {
  instead: "pieces",
  value: "dark",
  hue: "grey",
  lab: { l: 25, a: 0, b: 0 },
  reach: 0.82,
  cells: 5,
  area: areaOf(inches(9, 2) ** 2 * 5),
  length: inches(9),
  width: inches(42),
};
