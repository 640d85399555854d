import { describe, expect, test } from "vitest";
import { styles } from "../../../engine/back/index.ts";
import { partnersOf, shiftableAt } from "../../../engine/layout/index.ts";
import { inches } from "../../../engine/length/index.ts";
import { changePlan, makePlan } from "../../../engine/plan/index.ts";
import {
  lengthAsMeasured,
  measuredLength,
  newProject,
  type Project,
  type StayingCells,
} from "../../../files/index.ts";
import { sampleProject } from "../projects/sample.ts";
import { cellAfter, sameCell, wishAfter } from "./byHand.ts";
import { keyOf, type Wish } from "./desk.ts";
import { isTheKept, keptFrom, type Planning, planningFor, shownFor } from "./planning.ts";
import { textOf } from "./planText.ts";
import { cellsOf, stayingIn, toggled, withAnother } from "./stays.ts";

const blank = newProject({ title: "A back", createdAt: 0 });
const sample: Project = { ...blank, ...sampleProject("A sample") };

function ready(project: Project): Planning & { kind: "ready" } {
  const planning = planningFor(project);
  if (planning.kind !== "ready") throw new Error("this project can be planned");
  return planning;
}

function pages(project: Project): string[] {
  const planning = planningFor(project);
  return planning.kind === "ready" ? [] : planning.missing.map(({ page }) => page);
}

describe("what is needed before there can be a plan", () => {
  const sized = { ...blank, size: sample.size };
  const [row] = sample.leftovers;
  const spoilt = row && {
    ...row,
    cells: { ...row.cells, width: measuredLength("4 foo", "in") ?? row.cells.width },
  };

  test.each([
    ["nothing yet", blank, ["size", "leftovers"]],
    ["the size alone", sized, ["leftovers"]],
    ["leftovers alone", { ...sample, size: blank.size }, ["size"]],
    [
      "an extra no one asks for",
      { ...sample, size: { ...sample.size, extra: lengthAsMeasured(inches(40), "in") } },
      ["size"],
    ],
    ["a plain cloth of no colour", { ...sample, plain: { name: "", colour: "tealish" } }, ["size"]],
  ] as const)("%s", (_, project, expected) => {
    expect(pages(project)).toEqual(expected);
  });

  test("a side that is not known is one thing to mend, not two", () => {
    const planning = planningFor(blank);
    expect(planning.kind === "not-ready" && planning.missing[0]?.problems).toHaveLength(1);
  });

  test("rows that wait are counted, and the others are planned", () => {
    const leftovers = spoilt ? [spoilt as Project["leftovers"][number], ...sample.leftovers.slice(1)] : [];
    expect(ready({ ...sample, leftovers }).waiting).toBe(1);
    const planning = planningFor({ ...sample, leftovers: leftovers.slice(0, 1) });
    expect(planning).toMatchObject({ kind: "not-ready", rows: { all: 1, waiting: 1 } });
  });
});

const plainly = { amount: "usual", stays: null, byHand: null } as const;

describe("what she sees", () => {
  test("at first what suits her leftovers best, two more beside it, all others one tap away", () => {
    const planning = ready(sample);
    const shown = shownFor(sample, planning);
    expect(shown.chosen).toEqual({ ...plainly, style: planning.styles[0], seed: 1 });
    expect([shown.best.length, shown.others.length]).toEqual([3, styles.length - 3]);
    expect([...shown.best, ...shown.others].map(({ style }) => style)).toEqual(planning.styles);
  });

  test("what is drawn stays, or its style does, when it is known which plans are offered", () => {
    const planning = ready(sample);
    const [first = "cross", second = "cross"] = planning.styles;
    const plan = makePlan(planning.job, { style: first, seed: 1, effort: 20 });
    const chosenOf = (...offers: readonly [style: typeof first, amount: "usual" | "less"][]) =>
      shownFor(sample, planning, {
        kind: "made",
        offers: offers.map(([style, amount]) => ({ style, amount, plan, reasons: [] })),
        notes: [],
      }).chosen;
    expect(chosenOf([second, "usual"], [first, "usual"])).toMatchObject({ style: first, amount: "usual" });
    expect(chosenOf([second, "usual"], [first, "less"])).toMatchObject({ style: first, amount: "less" });
    expect(chosenOf([second, "usual"])).toMatchObject({ style: second, amount: "usual" });
  });

  test("her own choice, with its seed, wherever it stands in the row", () => {
    const planning = ready(sample);
    const style = planning.styles[5] ?? "cross";
    const shown = shownFor({ ...sample, wishes: { ...sample.wishes, style, seed: 4 } }, planning);
    expect(shown.chosen).toEqual({ ...plainly, style, seed: 4 });
    expect(shown.others).toContain(shown.chosen);
  });

  test("the plan she keeps, as long as it is for this very job", () => {
    const planning = ready(sample);
    const plan = makePlan(planning.job, { style: "cross", seed: 2, effort: 60 });
    const kept = {
      text: textOf(plan),
      job: planning.hash,
      style: plan.style,
      seed: 2,
      effort: 60,
      keptAt: 0,
    };
    const shown = shownFor({ ...sample, plan: kept }, planning);
    expect(shown.chosen).toEqual({ ...plainly, style: "cross", seed: 2 });
    expect(shown.laid && isTheKept(shown.laid, kept)).toBe(true);
    expect(isTheKept(plan, kept)).toBe(true);
    expect(isTheKept(makePlan(planning.job, { style: "cross", seed: 3, effort: 60 }), kept)).toBe(false);
    expect(shown.keptIsOld).toBe(false);

    const changed = { ...sample, plan: kept, leftovers: sample.leftovers.slice(1) };
    const old = shownFor(changed, ready(changed));
    expect([old.laid, old.keptIsOld, old.chosen.seed]).toEqual([null, true, 1]);
  });

  test("the plan she keeps while what is to stay lies in it, no more once another piece is to lie there", () => {
    const planning = ready(sample);
    const plan = makePlan(planning.job, { style: "cross", seed: 1, effort: 60 });
    const pieces = cellsOf(plan).flatMap((cell) =>
      cell.node.kind === "piece" ? [{ cell, node: cell.node }] : [],
    );
    const [one] = pieces;
    const other = pieces.find(({ node }) => node.piece !== one?.node.piece);
    if (one === undefined || other === undefined) throw new Error("two different pieces lie in it");
    const laidFor = (stays: StayingCells | null) => {
      const wishes = { ...sample.wishes, style: "cross", stays } as const;
      return shownFor({ ...sample, plan: keptFrom(plan, planning.hash), wishes }, planning).laid;
    };
    expect(laidFor(toggled(plan, null, one.cell))).not.toBeNull();
    const piece = { ...one.node, piece: other.node.piece };
    expect(laidFor(withAnother(plan, null, { cell: one.cell, piece }))).toBeNull();
  });

  test("the plan as she changed it, before the one she keeps, as long as it is for this very job", () => {
    const planning = ready(sample);
    const found = makePlan(planning.job, { style: "cross", seed: 1, effort: 60 });
    const cell = cellsOf(found).find(({ node }) => node.kind === "piece");
    if (cell === undefined) throw new Error("the plan has a piece");
    const edit = { kind: "make-plain", at: cell.path } as const;
    const changed = changePlan(found, edit, planning.job);
    if (!changed.ok) throw new Error("a piece can be made plain");
    const wish = { ...plainly, style: "cross", seed: 1 } as const;
    const next = wishAfter(
      { ...wish, stays: { plan: textOf(found), cells: cellsOf(found).map(({ key }) => key) } },
      { before: found, after: changed.value, hash: planning.hash, edit },
    );
    expect(next.stays?.cells).toHaveLength(cellsOf(found).length);
    expect(cellAfter(found, changed.value, edit)?.node.kind).toBe("cloth");
    const project = { ...sample, wishes: { ...sample.wishes, ...next } };
    const shown = shownFor(project, planning);
    expect(shown.laid).toBe(changed.value);
    expect([keyOf(shown.chosen) === keyOf(next), shown.changesAreOld]).toEqual([true, false]);

    const fewer = { ...project, leftovers: sample.leftovers.slice(1) };
    const old = shownFor(fewer, ready(fewer));
    expect([old.laid, old.chosen.byHand, old.changesAreOld]).toEqual([null, null, true]);
  });
});

describe("after a part was moved", () => {
  test("what stays in it stays where it lies now", () => {
    const { job, hash } = ready(sample);
    const before = makePlan(job, { style: "insert-across", seed: 1, effort: 60 });
    const [cell, row] = cellsOf(before).flatMap((one) => {
      const part = shiftableAt(before.layout, one.path, job).find(
        ({ path, canMove }) => canMove && path.length === 1,
      );
      return part === undefined || one.node.kind !== "piece" ? [] : [[one, part] as const];
    })[0] ?? [null, null];
    if (cell === null || row === null) throw new Error("a piece lies in a row that can be moved");
    const edit = { kind: "move", at: row.path, along: row.along, by: inches(1) } as const;
    const changed = changePlan(before, edit, job);
    if (!changed.ok) throw new Error("the row can be moved");
    const wish: Wish = { ...plainly, style: "insert-across", seed: 1, stays: toggled(before, null, cell) };
    const next = wishAfter(wish, { before, after: changed.value, hash, edit });
    expect([...stayingIn(changed.value, next.stays)]).toEqual([cell.key]);
    expect(sameCell(changed.value, cell)?.y).toBe(cell.y + inches(1));
  });
});

describe("after two pieces have changed places", () => {
  test("there is a cell in her hand, wherever they lay", () => {
    const { job } = ready(sample);
    const plan = makePlan(job, { style: "cross", seed: 1, effort: 60 });
    const pieces = cellsOf(plan).filter(({ node }) => node.kind === "piece");
    const swaps = pieces.flatMap((cell) => {
      const other = partnersOf(cell, plan.layout, job).find(({ node }) => node.kind === "piece");
      return other === undefined ? [] : [{ kind: "swap", at: cell.path, with: other.path } as const];
    });
    const changed = swaps.flatMap((swap) => {
      const after = changePlan(plan, swap, job);
      return after.ok ? [cellAfter(plan, after.value, swap)] : [];
    });
    expect(changed.length).toBeGreaterThan(0);
    expect(changed).not.toContain(null);
  });
});
