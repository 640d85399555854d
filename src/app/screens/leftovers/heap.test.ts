import { describe, expect, test } from "vitest";
import type { DraftPiece } from "../../../engine/cloth/index.ts";
import { areaToNumber, inches } from "../../../engine/length/index.ts";
import { leftoverOf, newProject, type Project, withTypedCell } from "../../../files/index.ts";
import { commonUse, heapOf, heapSorter } from "./heap.ts";

const base = newProject({ title: "A back", createdAt: 0 });
const row = (id: string, piece: Omit<DraftPiece, "row">) => ({ id, ...leftoverOf(piece, "in") });
const strips = row("a", {
  kind: "strip",
  width: inches(5, 2),
  height: inches(31),
  count: 4,
  fabric: "teal dots",
  colour: "teal",
});
const blocks = row("b", { kind: "block", width: inches(13, 2), height: inches(13, 2), count: 12 });
const square = row("c", { width: inches(5), height: inches(5), fabric: "cream", colour: "ivory" });
const project: Project = { ...base, leftovers: [strips, blocks, square] };

describe("the heap on the table", () => {
  const heap = heapOf(project);

  test("is sorted in piles with counts and area", () => {
    expect(heap.piles.map(({ name, count, area }) => [name, count, areaToNumber(area, "in")])).toEqual([
      // 4 × 2½ × 31, 12 × 6½ × 6½ and 5 × 5 sq in.
      ["strips", 4, 310],
      ["blocks", 12, 507],
      ["small", 1, 25],
    ]);
    expect([heap.count, areaToNumber(heap.area, "in"), heap.stop]).toEqual([17, 842, null]);
  });

  test("says how much there is of each fabric, most first, and how light each is", () => {
    expect(heap.fabrics.map(({ fabric, rows, isKnown }) => [fabric.name, rows, isKnown])).toEqual([
      ["", ["b"], false],
      ["teal dots", ["a"], true],
      ["cream", ["c"], true],
    ]);
    expect(heap.fabrics[0]?.ofMost).toBe(1);
    expect(heap.fabrics.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1);
    expect(heap.values.map(({ fabric }) => fabric.name)).toEqual(["cream", "", "teal dots"]);
  });

  test("draws a row in its own colour, and in none where none is known", () => {
    expect([heap.colours.get("a"), heap.colours.get("b")]).toEqual(["teal", null]);
  });

  test("does without a back, a top or plain cloth that can be read", () => {
    const unfinished = { ...project, plain: { name: "", colour: "no colour at all" } };
    expect(heapOf(unfinished).count).toBe(17);
    expect(heapOf(base)).toMatchObject({ count: 0, piles: [], stop: null });
  });

  test("keeps what is marked to stay out, and what is roughly cut, as it lies there", () => {
    const marked = {
      ...project,
      heap: { cutting: "rough", reserveBinding: true, reserveLabel: true, shelved: null } as const,
      leftovers: project.leftovers.map((leftover) => ({
        ...leftover,
        cells: withTypedCell(leftover.cells, "use", "give-away", "in"),
      })),
    };
    const { piles, area } = heapOf(marked);
    expect(areaToNumber(area, "in")).toBe(842);
    expect(piles.map(({ use }) => use)).toEqual(["give-away", "give-away", "give-away"]);
  });

  test("counts stock without a list, which is no row", () => {
    const rough = [
      {
        id: "r",
        kind: "strips",
        fabric: "teal dots",
        colour: "",
        width: { text: "2 1/2", unit: "in", value: inches(5, 2) },
        total: { text: "9 yd", unit: "in", value: inches(324) },
      },
    ] as const;
    const heapWith = heapOf({ ...project, rough });
    const teal = heapWith.fabrics.find(({ fabric }) => fabric.name === "teal dots");
    expect(teal).toMatchObject({ rows: ["a"], rough: ["r"] });
    // It takes the colour that its name has elsewhere.
    expect(heapWith.colours.get("r")).toBe("teal");
  });
});

describe("rows that wait", () => {
  const { kind: _, ...noKind } = square.cells;
  const waiting: Project = {
    ...project,
    leftovers: [
      strips,
      { id: "line", line: "teal dots", cells: {}, others: {} },
      { ...square, id: "date", cells: withTypedCell(square.cells, "width", "2-Jan", "in") },
      { ...blocks, id: "none", cells: withTypedCell(blocks.cells, "count", "0", "in") },
      { id: "half", line: "", cells: withTypedCell({}, "width", "5", "in"), others: {} },
      { ...square, id: "told", cells: noKind },
    ],
  };

  test("stay out, with what is against them; the others are there", () => {
    const heap = heapOf(waiting);
    expect(heap.rows.map(({ id }) => id)).toEqual(["a", "told"]);
    expect(
      heap.waiting.map(({ leftover, problems }) => [leftover.id, problems.map(({ kind }) => kind)]),
    ).toEqual([
      ["line", []],
      ["date", []],
      ["none", ["count-too-small"]],
      ["half", ["size-missing"]],
    ]);
  });
});

test("more pieces than any quilt leaves over are said to be so", () => {
  const many = row("m", { width: inches(5), height: inches(5), count: 4000, colour: "teal" });
  expect(heapOf({ ...base, leftovers: [many, { ...many, id: "n" }] }).stop?.kind).toBe("too-many-pieces");
});

test("a mark is common where all have it", () => {
  const { rows } = heapOf(project);
  expect(commonUse(rows)).toBe("yes");
  expect(commonUse([])).toBeNull();
});

describe("a heap that is sorted again", () => {
  const more = row("d", { kind: "strip", width: inches(2), height: inches(20), fabric: "teal dots" });
  const sorted = heapSorter();
  const before = sorted(project).rows;

  test("is as any heap is, and its rows are the very same while nothing of theirs changes", () => {
    const changed = { ...project, leftovers: [...project.leftovers, more] };
    const heap = sorted(changed);
    expect(heap).toEqual(heapOf(changed));
    expect(heap.rows.slice(0, 3).every((one, index) => one === before[index])).toBe(true);
    // All of one fabric are of the very same fabric: what there is of it is counted by it.
    expect(heap.rows[3]?.fabric).toBe(before[0]?.fabric);
  });

  test("has another row where its cloth or its mark is another", () => {
    const coloured = withTypedCell(strips.cells, "colour", "navy", "in");
    const marked = withTypedCell(square.cells, "use", "must", "in");
    const changed = {
      ...project,
      leftovers: [{ ...strips, cells: coloured }, blocks, { ...square, cells: marked }],
    };
    const heap = sorted(changed);
    expect(heap).toEqual(heapOf(changed));
    expect(heap.rows.map((one) => before.includes(one))).toEqual([false, true, false]);
  });
});
