import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Job } from "../../src/engine/cloth/index.ts";
import {
  checkLayout,
  choicesFor,
  clothsOf,
  type Edit,
  type LeafNode,
  leavesOf,
  nodeAt,
  type PlacedLeaf,
  partnersOf,
  type Shift,
} from "../../src/engine/layout/index.ts";
import { cut, inches } from "../../src/engine/length/index.ts";
import { changePlan, makePlan, type Plan } from "../../src/engine/plan/index.ts";
import { heaps, jobOf } from "./heaps.ts";
import { randomCases } from "./randomJobs.ts";

const cellsOf = (plan: Plan) => leavesOf(plan.layout, plan);
const placeOf = ({ x, y, node }: PlacedLeaf) => [x, y, node.width, node.height].join(" ");

/** All of a cell but what is settled anew: which cloth or strip it is cut from, and how much is left long. */
function whatIs(node: LeafNode): string {
  const { kind, width, height } = node;
  switch (node.kind) {
    case "piece":
      return JSON.stringify([kind, width, height, node.piece, node.turned, node.quarter]);
    case "cloth":
      return JSON.stringify([kind, width, height, node.fabric]);
    case "unit":
      return JSON.stringify([kind, width, height, node.pattern, node.rotations, node.pieces]);
    case "slab":
      return JSON.stringify([kind, width, height, node.crumbs, node.pieces]);
  }
}

type Pick = {
  readonly cell: number;
  readonly other: number;
  readonly what: Exclude<Edit["kind"], Shift["kind"]>;
};

/** Any edit at any cell, whether it can be made or not. */
function editFor({ cell, other, what }: Pick, plan: Plan, job: Job): Edit {
  const cells = cellsOf(plan);
  const first = cell % cells.length;
  const inTurn = [...cells.slice(first), ...cells.slice(0, first)];
  const lying = new Set(plan.unused.map(({ piece }) => piece));
  const unusedFor = (place: PlacedLeaf) =>
    choicesFor(place, plan.layout, job).filter(({ piece }) => lying.has(piece));
  const here =
    (what === "put" ? inTurn.find((place) => unusedFor(place).length > 0) : undefined) ?? inTurn[0];
  if (here === undefined) throw new Error("a plan has cells");
  const at = here.path;
  const choices = unusedFor(here);
  const piece = choices[other % Math.max(1, choices.length)];
  if (what === "put" && piece !== undefined) return { kind: "put", at, piece };
  const fabrics = clothsOf(job);
  if (what === "cloth") return { kind: "cloth", at, fabric: fabrics[other % fabrics.length] ?? job.plain };
  if (what !== "swap") return { kind: what === "put" ? "make-plain" : what, at };
  // Half of them such as are offered.
  const partners = other % 2 === 0 ? partnersOf(here, plan.layout, job) : cells;
  return { kind: "swap", at, with: (partners[other % Math.max(1, partners.length)] ?? here).path };
}

const picks: fc.Arbitrary<Pick> = fc.record({
  cell: fc.nat(500),
  other: fc.nat(500),
  what: fc.constantFrom("swap", "swap", "turn", "make-plain", "put", "cloth"),
});

const touched = (edit: Edit) =>
  [edit.at, ...(edit.kind === "swap" ? [edit.with] : [])].map((path) => path.join(" "));

function isWhole(before: Plan, edit: Edit, after: Plan): void {
  expect(checkLayout(after)).toEqual([]);
  const used = (plan: Plan) => new Map(plan.unused.map(({ piece, count }) => [piece, count]));
  // What is taken out is on the heap again; what is put in is not.
  const given = pieceAt(before, edit);
  if (edit.kind === "make-plain" && given !== null && !isShared(before, given))
    expect(used(after).get(given) ?? 0).toBe((used(before).get(given) ?? 0) + 1);
  const kept = cellsOf(before).filter(({ path }) => !touched(edit).includes(path.join(" ")));
  const there = cellsOf(after).map(({ node }) => whatIs(node));
  for (const { node } of kept) {
    const at = there.indexOf(whatIs(node));
    // A strip that brings a piece to the ruler's step goes with it.
    if (at < 0 && node.kind === "cloth" && node.role === "coping") continue;
    expect(at, `${whatIs(node)} is still there`).toBeGreaterThanOrEqual(0);
    there.splice(at, 1);
  }
}

function pieceAt(plan: Plan, { at }: Edit): string | null {
  const node = cellsOf(plan).find(({ path }) => path.join(" ") === at.join(" "))?.node;
  return node?.kind === "piece" && node.copy === undefined ? node.piece : null;
}

/** Whether cells are cut from copies of it too: then a copy more may be free at once. */
function isShared(plan: Plan, piece: string): boolean {
  return cellsOf(plan).some(
    ({ node }) => node.kind === "piece" && node.piece === piece && node.copy !== undefined,
  );
}

describe("an edit by hand", () => {
  it("gives a plan that can be sewn, all else as it was, or says why it can't be", () => {
    const done = new Map<string, number>();
    const law = fc.property(randomCases, fc.array(picks, { minLength: 6, maxLength: 12 }), (given, some) => {
      const { job, style, seed } = given;
      let plan = makePlan(job, { style, seed, effort: 4 });
      for (const pick of some) {
        const edit = editFor(pick, plan, job);
        const after = changePlan(plan, edit, job);
        const name = `${edit.kind} ${after.ok ? "made" : after.error.kind}`;
        done.set(name, (done.get(name) ?? 0) + 1);
        if (!after.ok) continue;
        isWhole(plan, edit, after.value);
        plan = after.value;
      }
    });
    fc.assert(law, { seed: 1, numRuns: 20 });
    for (const kind of ["swap", "make-plain", "put"])
      expect(done.get(`${kind} made`) ?? 0, `${kind} is made now and then`).toBeGreaterThan(0);
  });

  const heap = heaps.find((name) => name.endsWith("r.3-s1")) ?? "";
  const job = jobOf(heap, "weekend");
  const plan = makePlan(job, { style: "chunks", seed: 1, effort: 40 });
  const pieces = cellsOf(plan).filter(({ node }) => node.kind === "piece");

  it("twice the same swap leads back to the very plan", () => {
    const [cell, partner] =
      pieces
        .flatMap((one) => partnersOf(one, plan.layout, job).map((other) => [one, other] as const))
        .find(
          ([one, other]) => one.node.kind === "piece" && other.node.kind === "piece" && isSame(one, other),
        ) ?? [];
    if (cell === undefined || partner === undefined) throw new Error("two pieces of one size differ");
    const edit: Edit = { kind: "swap", at: cell.path, with: partner.path };
    const once = changePlan(plan, edit, job);
    const twice = once.ok ? changePlan(once.value, edit, job) : once;
    expect(once.ok && once.value.layout).not.toEqual(plan.layout);
    expect(twice.ok && twice.value).toEqual({ ...plan, byHand: true });
  });

  const isSame = ({ node: one }: PlacedLeaf, { node: other }: PlacedLeaf) =>
    one.width === other.width && one.height === other.height;

  it("what has stripes lies the other way once it is turned, and as before turned again", () => {
    const striped = { ...job, pieces: job.pieces.map((row) => ({ ...row, direction: "stripe" }) as const) };
    const square = pieces.find(({ node: { width, height } }) => width === height);
    if (square === undefined) throw new Error("a square piece lies by itself");
    const edit: Edit = { kind: "turn", at: square.path };
    expect(changePlan(plan, edit, job)).toEqual({ ok: false, error: { kind: "same" } });
    const once = changePlan(plan, edit, striped);
    const twice = once.ok ? changePlan(once.value, edit, striped) : once;
    expect(once.ok && once.value.layout).not.toEqual(plan.layout);
    expect(twice.ok && twice.value.layout).toEqual(plan.layout);
  });

  it("a plain part is cut from one of her lengths as far as it goes, and bought again", () => {
    const [first] = job.pieces;
    const fabric = job.fabrics.find(({ id }) => id !== job.plain)?.id ?? "";
    if (first === undefined) throw new Error("there is a heap");
    const facts = {
      ...first,
      id: "length-of-it",
      fabric,
      count: 1,
      keep: "cut",
      direction: "none",
      use: "yes",
    } as const;
    const withLength = (height: number): Job => ({
      ...job,
      pieces: [
        ...job.pieces,
        { ...facts, kind: "length", width: cut(inches(42)), height: cut(inches(height)) },
      ],
    });
    const [plain] = cellsOf(plan)
      .filter(({ node }) => node.kind === "cloth" && node.source === "buy")
      .sort((one, other) => other.node.width * other.node.height - one.node.width * one.node.height);
    const edit: Edit = { kind: "cloth", at: plain?.path ?? [], fabric };
    const hers = changePlan(plan, edit, withLength(100));
    expect(hers.ok && nodeAt(hers.value.layout, edit.at)).toMatchObject({
      fabric,
      source: { piece: facts.id },
    });
    const bought = hers.ok ? changePlan(hers.value, { ...edit, fabric: job.plain }, withLength(100)) : hers;
    expect(bought.ok && bought.value.layout).toEqual(plan.layout);
    expect(changePlan(plan, edit, withLength(1))).toEqual({
      ok: false,
      error: { kind: "too-little-cloth", fabric },
    });
  });

  it("every swap that is offered can be made", () => {
    const some = pieces
      .slice(0, 2)
      .flatMap((cell) => partnersOf(cell, plan.layout, job).map((other) => [cell, other]));
    const refused = some.flatMap(([cell, other]) => {
      const edit: Edit = { kind: "swap", at: cell?.path ?? [], with: other?.path ?? [] };
      const after = changePlan(plan, edit, job);
      return after.ok ? [] : [after.error];
    });
    expect(some.length).toBeGreaterThan(10);
    expect(refused).toEqual([]);
  });

  it("what is made plain can be filled again with what lay there", () => {
    const cell = pieces.find(
      ({ node }) => node.kind === "piece" && node.copy === undefined && node.quarter === undefined,
    );
    if (cell === undefined) throw new Error("a piece lies by itself");
    const bare = changePlan(plan, { kind: "make-plain", at: cell.path }, job);
    if (!bare.ok) throw new Error(`it can be made plain: ${JSON.stringify(bare.error)}`);
    const place = cellsOf(bare.value).find((one) => placeOf(one) === placeOf(cell));
    if (place === undefined) throw new Error("its place is plain now");
    const own = choicesFor(place, bare.value.layout, job).find(
      ({ piece }) => cell.node.kind === "piece" && piece === cell.node.piece,
    );
    if (own === undefined) throw new Error("what lay there fits there");
    const again = changePlan(bare.value, { kind: "put", at: place.path, piece: own }, job);
    expect(again.ok && cellsOf(again.value).map(placeOf)).toEqual(cellsOf(plan).map(placeOf));
    expect(again.ok && again.value.unused).toEqual(plan.unused);
  });
});
