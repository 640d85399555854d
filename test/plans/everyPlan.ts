import { describe, expect, it } from "vitest";
import { styles } from "../../src/engine/back/index.ts";
import type { Time } from "../../src/engine/cloth/index.ts";
import { heaps, jobOf } from "./heaps.ts";
import { lawsBrokenBy } from "./laws.ts";

// Little effort: what is wrong with a plan is wrong with it however long one looks for a fuller one.
export const effort = 60;
export const seed = 1;

/** In every style, of every heap: a file for each time there is, so that they are made beside each other. */
export function everyPlanKeepsEveryLaw(time: Time, of: readonly string[] = heaps): void {
  describe.each(of)(
    `what is left over, in ${time === "weekend" ? "a weekend" : "an afternoon"}: %s`,
    (heap) => {
      it.each(styles)("as %s is a plan that keeps every law", (style) => {
        expect(lawsBrokenBy(jobOf(heap, time), { style, seed, effort })).toEqual([]);
      });
    },
  );
}
