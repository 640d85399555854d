import { describe, expect, it } from "vitest";
import { type Style, styles } from "../../src/engine/back/index.ts";
import type { Job, SizedPiece } from "../../src/engine/cloth/index.ts";
import { nodesOf } from "../../src/engine/layout/index.ts";
import { type Cut, cut, inches, larger, length } from "../../src/engine/length/index.ts";
import { defaultEffort, makePlan } from "../../src/engine/plan/index.ts";
import { jobOf, worked } from "./heaps.ts";
import { brokenLaws } from "./laws.ts";
import { checkOf, type Rule, rules } from "./rules.ts";

// No plan of these heaps breaks one of them; `npm run bench:rules` counts more heaps, and contrast too.
const kept: readonly Rule[] = rules.filter((rule) => rule !== "contrast");

describe.each(worked)("what she would say no to, in plans of %s", (heap) => {
  const job = jobOf(heap, "weekend");

  it.each(styles)("as %s: none of it, and every law is kept", (style: Style) => {
    const plan = makePlan(job, { style, seed: 1, effort: 400 });
    expect(kept.flatMap((rule) => checkOf[rule](plan))).toEqual([]);
    expect(brokenLaws(plan, job)).toEqual([]);
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

it("strips of one length, too long for a set without something to trim: the set is shorter than they are", () => {
  const job = withLongStrips(jobOf("real-r.5-s2", "weekend"));
  const plan = makePlan(job, { style: "cross", seed: 1, effort: 400 });
  expect(rules.flatMap((rule) => checkOf[rule](plan))).toEqual([]);
  const sets = nodesOf(plan.layout, job).flatMap(({ node }) =>
    node.kind === "join" && node.pattern === "strip-set" ? [node] : [],
  );
  expect(sets.map(({ width, height }) => Math.max(width, height))).toContain(inches(19));
});

/** Four strips of 20½ × 2½ in and what is shorter. */
function withLongStrips(job: Job): Job {
  const shown = job.fabrics.slice(0, 4);
  const like = job.pieces.find((piece): piece is SizedPiece => piece.kind === "strip");
  if (like === undefined) throw new Error("no strip in it");
  const size = { width: cut(inches(41, 2)), height: cut(inches(5, 2)) };
  const strips = shown.map(({ id: fabric }, at): SizedPiece => {
    return { ...like, ...size, id: `strip-9${at}`, fabric, count: 1, direction: "none", keep: "trim" };
  });
  const isShort = (piece: Job["pieces"][number]) =>
    piece.kind !== "crumbs" && larger(piece.width, piece.height) < inches(17);
  return { ...job, pieces: [...job.pieces.slice(0, 14).filter(isShort), ...strips] };
}

function withShorter(job: Job, share: number): Job {
  const shorter = (height: Cut) => cut(length(Math.floor((height * share) / job.step) * job.step));
  const pieces = job.pieces.map((piece) =>
    piece.kind === "length" ? { ...piece, height: shorter(piece.height) } : piece,
  );
  return { ...job, pieces };
}
