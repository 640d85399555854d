import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { heaps, jobOf } from "../../../../test/plans/heaps.ts";
import { compose, styles } from "../../back/index.ts";
import type { Job } from "../../cloth/index.ts";
import { fillRegions } from "../fillRegions.ts";
import { type Bough, boughFrom, type Way } from "./bough.ts";
import { eyeOf, isHalf, limitsOf } from "./eye.ts";
import type { Eye, Fault, FaultKind } from "./fault.ts";
import { Known } from "./glance.ts";
import { plainer, rearranged } from "./moves.ts";
import { Viewer } from "./scene.ts";

type Laid = { readonly root: Bough; readonly eye: Eye };

const heapJobs = heaps.filter((heap) => /-s[12]$/.test(heap)).map((heap) => jobOf(heap, "weekend"));
/** With a top, and with the back's size alone: then hardly anything has been mended. */
const jobs: readonly Job[] = [...heapJobs, ...heapJobs.map((job) => ({ ...job, top: null }))];
const kinds: readonly FaultKind[] = ["near miss", "crossing", "direction", "like", "caterpillar", "sliver"];
const laid = jobs.flatMap((job, at) => laidFor(job, at));

describe("a glance at a layout that differs a little", () => {
  it("finds what a whole look finds", () => {
    const found = { faults: 0, changed: 0 };
    const walk = fc.array(fc.tuple(fc.nat(), fc.constantFrom(...kinds), fc.nat(40), fc.boolean()), {
      minLength: 4,
      maxLength: 12,
    });
    fc.assert(
      fc.property(fc.constantFrom(...laid), walk, ({ root, eye }, steps) => {
        const viewer = new Viewer((node) => isHalf(node, eye));
        let known = new Known(root, eye, viewer);
        for (const [cell, kind, other, plain] of steps) {
          const changed = otherLayout(known, eye, { cell, kind, other, plain });
          if (changed === null) continue;
          const glance = known.glanceAt(changed);
          known = new Known(changed, eye, new Viewer((node) => isHalf(node, eye)));
          expect(glance.faults(Number.POSITIVE_INFINITY)).toBe(known.faults.length);
          expect(glance.like).toBe(known.like);
          expect(glance.used).toBeCloseTo(known.used, 6);
          if (known.faults.length > 0) expect(glance.faults(known.faults.length - 1)).toBeNull();
          found.faults += known.faults.length;
          found.changed++;
        }
      }),
      { numRuns: 150 },
    );
    expect(found.changed).toBeGreaterThan(300);
    expect(found.faults).toBeGreaterThan(300);
  });
});

function laidFor(job: Job, at: number): Laid[] {
  const style = styles[at % styles.length];
  if (style === undefined) return [];
  const search = fillRegions(compose(job, style, 0), job, { style, seed: 1, effort: 60 });
  search.step(60);
  const layout = search.layout();
  const whole = { x: 0, y: 0, width: layout.width, height: layout.height };
  const upper = { ...whole, height: Math.round(layout.height / 2) };
  const spots = at % 2 === 0 ? [whole] : [upper, whole];
  return [{ root: boughFrom(layout, { spots, stays: [] }, job), eye: eyeOf(layout, job, [0, 1]) }];
}

type Asked = {
  readonly cell: number;
  readonly kind: FaultKind;
  readonly other: number;
  readonly plain: boolean;
};

/** As if something were wrong with a cell: one of the ways to mend it. */
function otherLayout({ scene }: Known, eye: Eye, { cell, kind, other, plain }: Asked): Bough | null {
  const { cells, root } = scene;
  const way: Way = cells[cell % cells.length]?.way ?? [];
  const fault: Fault = { kind, ways: [way], by: [eye.job.step], wide: null };
  const mending = {
    root,
    begun: new Set<string>(),
    cloths: [eye.job.plain, eye.job.plain],
    isHalf: (leaf: Bough & { readonly kind: "leaf" }) => isHalf(leaf.node, eye),
    limits: limitsOf(eye),
  };
  const others = [...(plain ? plainer : rearranged)(fault, mending)];
  return others[other % others.length] ?? null;
}
