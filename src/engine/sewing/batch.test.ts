import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { handMadePlan } from "../../../test/generators/handMadePlan.ts";
import { plainCloth, sampleLayout } from "../../../test/generators/layouts.ts";
import { batchFor, isRun, shortestBatch, stepMinutes } from "./batch.ts";
import { stepsFor } from "./steps.ts";
import type { Step } from "./types.ts";

const sittings = fc.record({
  seed: fc.nat(),
  width: fc.integer({ min: 4, max: 100 }),
  height: fc.integer({ min: 4, max: 100 }),
  cell: fc.integer({ min: 4, max: 30 }),
  /** How far she has come, 0 to 1. */
  come: fc.double({ min: 0, max: 1, noNaN: true }),
  minutes: fc.integer({ min: 1, max: 400 }),
});

type Asked = typeof sittings extends fc.Arbitrary<infer A> ? A : never;

type Sitting = {
  readonly steps: readonly Step[];
  readonly done: ReadonlySet<string>;
  readonly minutes: number;
};

/** Their first section alone is longer than the sitting, a later one is not. */
const shortSittings = [
  [5, 10],
  [28, 11],
].map(([height = 0, minutes = 0]): [Asked] => [{ seed: 0, width: 4, height, cell: 4, come: 0, minutes }]);

function forEachSitting(law: (sitting: Sitting) => void): void {
  fc.assert(
    fc.property(sittings, ({ seed, come, minutes, ...size }) => {
      const { layout, job } = sampleLayout(seed, { ...size, fabrics: [plainCloth] });
      const steps = stepsFor(layout, job);
      const done = new Set(steps.slice(0, Math.floor(come * steps.length)).map(({ id }) => id));
      law({ steps, done, minutes });
    }),
    { numRuns: 200, examples: shortSittings },
  );
}

const takenBy = ({ from }: Step) => from.flatMap((part) => ("step" in part ? [part.step] : []));

describe("the steps for a sitting", () => {
  test("fit its time by the careful hand", () => {
    forEachSitting(({ steps, done, minutes }) => {
      const batch = batchFor(steps, done, minutes);
      if (batch === null) return;
      const careful = batch.steps.reduce((total, step) => total + stepMinutes(step)[1], 0);
      expect(batch.minutes[1]).toBeLessThanOrEqual(minutes);
      expect(careful).toBeLessThanOrEqual(batch.minutes[1]);
      expect(batch.minutes[0]).toBeLessThanOrEqual(batch.minutes[1]);
    });
  });

  test("are open, in the order of sewing, and each has what it takes", () => {
    forEachSitting(({ steps, done, minutes }) => {
      const batch = batchFor(steps, done, minutes)?.steps ?? [];
      expect(batch).toEqual(steps.filter((step) => batch.includes(step)));
      const there = new Set(done);
      for (const step of batch) {
        expect(done.has(step.id)).toBe(false);
        for (const id of takenBy(step)) expect(there.has(id)).toBe(true);
        there.add(step.id);
      }
    });
  });

  test("end where no row hangs half sewn", () => {
    forEachSitting(({ steps, done, minutes }) => {
      const batch = batchFor(steps, done, minutes)?.steps ?? [];
      for (const step of batch) {
        const taker = steps.find((one) => takenBy(one).includes(step.id));
        if (isRun(step, taker)) expect(batch).toContain(taker);
      }
    });
  });

  test("there are some wherever any fit, and all of them when there is time for all", () => {
    forEachSitting(({ steps, done, minutes }) => {
      const least = shortestBatch(steps, done);
      expect(batchFor(steps, done, minutes) === null).toBe(least === null || least.minutes[1] > minutes);
      expect(least === null).toBe(done.size === steps.length);
      const whole = batchFor(steps, done, 1_000_000)?.steps ?? [];
      expect(whole).toHaveLength(steps.length - done.size);
    });
  });

  test("the same sitting has the same steps", () => {
    forEachSitting(({ steps, done, minutes }) => {
      expect(batchFor(steps, done, minutes)).toEqual(batchFor(steps, done, minutes));
    });
  });

  // Ten steps: a unit and a slab, a section, the sections together.
  test("45 minutes give more than one step of a small back, four minutes none", () => {
    const { steps } = handMadePlan();
    const batch = batchFor(steps, new Set(), 45);
    expect(batch?.steps.length).toBeGreaterThan(1);
    expect(batchFor(steps, new Set(), 4)).toBeNull();
  });
});
