import { describe, expect, test } from "vitest";
import { inches, type Length, length, millimetres } from "../engine/length/index.ts";
import {
  checkProject,
  draftOfProject,
  faultsOf,
  hashOfJob,
  isWaiting,
  leftoverOf,
  lengthAsMeasured,
  measuredLength,
  newProject,
  type Project,
  type ProjectSize,
  pieceOf,
  readTableRows,
  sizeOfProject,
  withTypedCell,
} from "./index.ts";

const empty = newProject({ title: "x", createdAt: 0 });
const of = (text: string, unit: "in" | "cm" = "in") => measuredLength(text, unit);
const sized = (size: Partial<ProjectSize>): Project => ({ ...empty, size: { ...empty.size, ...size } });
const top = {
  topWidths: [of("60"), of("60 1/4"), of("59 7/8")],
  topHeights: [of("80"), null, null],
} as const;

describe("sizes", () => {
  test.each<[string, Partial<ProjectSize>, readonly [Length, Length] | null]>([
    ["the largest of three measures counts", top, [inches(273, 4), inches(88)]],
    ["her own extra goes before the method's", { ...top, extra: of("3") }, [inches(265, 4), inches(86)]],
    [
      "her quilter's before her own",
      { ...top, extra: of("3"), asksExtra: of("5") },
      [inches(281, 4), inches(90)],
    ],
    ["what her quilter asks for in all", { ...top, asksWidth: of("72") }, [inches(72), inches(88)]],
    ["which the back may already be", { ...top, asksWidth: of("40") }, [inches(273, 4), inches(88)]],
    ["her own back", { ...top, backWidth: of("70"), backHeight: of("90") }, [inches(70), inches(90)]],
    [
      "a back without a top",
      { from: "back", backWidth: of("50"), backHeight: of("50") },
      [inches(50), inches(50)],
    ],
    ["one side is not measured yet", { topWidths: top.topWidths }, null],
    ["what can't be read is not measured", { ...top, topHeights: [of("8 0"), null, null] }, null],
  ])("%s", (_, size, back) => {
    const found = sizeOfProject(sized(size)).back;
    expect(found).toEqual(back && { width: back[0], height: back[1] });
  });

  test("changing the unit on screen changes no measure", () => {
    const project = sized(top);
    const inCm: Project = { ...project, settings: { ...project.settings, unit: "cm" } };
    expect(sizeOfProject(inCm).top).toEqual(sizeOfProject(project).top);
  });
});

describe("rows", () => {
  const square = leftoverOf({ kind: "square", width: inches(5), count: 4 }, "in");

  test("a square is known by one side; a cell that can't be read keeps its row waiting", () => {
    expect(pieceOf(square, 1)).toEqual({
      row: 1,
      kind: "square",
      width: inches(5),
      height: inches(5),
      count: 4,
    });
    const spoilt = { ...square, cells: withTypedCell(square.cells, "width", "2-Jan", "in") };
    expect(isWaiting(spoilt)).toBe(true);
    expect(pieceOf(spoilt, 1)).toBeNull();
    expect(faultsOf(spoilt, "in")).toMatchObject([{ kind: "not-a-size", field: "width" }]);
    const mended = { ...spoilt, cells: withTypedCell(spoilt.cells, "width", "2 1/2", "in") };
    expect(pieceOf(mended, 1)?.width).toBe(inches(5, 2));
    expect(withTypedCell(mended.cells, "width", " ", "in").width).toBeUndefined();
  });

  test("a line of which nothing was understood waits as a whole", () => {
    expect(isWaiting({ line: "4 stirps", cells: {}, others: {} })).toBe(true);
  });

  test("a piece becomes a row of texts that read as the same piece", () => {
    const piece = {
      kind: "strip",
      width: millimetres(63),
      height: length(12345),
      count: 3,
      washed: false,
      use: "first",
      fabric: "oat",
    } as const;
    for (const unit of ["in", "cm"] as const) {
      const row = leftoverOf(piece, unit);
      expect(pieceOf(row, 7)).toEqual({ ...piece, row: 7 });
      for (const side of ["width", "height"] as const) {
        const text = row.cells[side]?.text ?? "";
        expect(withTypedCell({}, side, text, unit)[side]?.value).toBe(piece[side]);
      }
    }
  });

  test("a table keeps every cell, also those that can't be read", () => {
    const table =
      "kind,width,height,count,shop\nstrip,2 1/2,31,4,blue box\nstirp,2-Jan,31,x,\nsquare,5,,1,a,b,c\n";
    const { rows, problems } = readTableRows(new TextEncoder().encode(table), "in");
    expect(rows.map(isWaiting)).toEqual([false, true, true]);
    expect(rows[0]).toMatchObject({
      cells: { count: { text: "4", value: 4 } },
      others: { shop: "blue box" },
    });
    expect(rows[1]?.cells).toMatchObject({
      kind: { text: "stirp", value: null },
      width: { text: "2-Jan", value: null },
      height: { text: "31", value: inches(31) },
    });
    expect(rows[2]).toMatchObject({ line: "square,5,,1,a,b,c", cells: {} });
    expect(new Set(problems.map((problem) => "row" in problem && problem.row))).toEqual(new Set([3, 4]));
    expect(readTableRows(new Uint8Array(), "in")).toMatchObject({
      rows: [],
      problems: [{ kind: "empty-file" }],
    });
  });
});

describe("draft", () => {
  const strip = leftoverOf({ kind: "strip", width: inches(5, 2), height: inches(30), count: 6 }, "in");
  const heap: Project = {
    ...sized(top),
    leftovers: [
      { ...strip, id: "good" },
      { line: "?", cells: {}, others: {}, id: "unread" },
      { ...strip, cells: withTypedCell(strip.cells, "count", "0", "in"), id: "none" },
    ],
  };

  test("good rows enter, bad ones wait and are named by their place", () => {
    const { job, stops, waiting } = checkProject(heap);
    expect(job?.pieces).toMatchObject([{ id: "strip-1", count: 6 }]);
    expect(stops).toMatchObject([{ kind: "count-too-small", row: 3 }]);
    expect(waiting).toEqual(["unread", "none"]);
  });

  test("without sizes there is no job, and it is said", () => {
    const { job, stops } = checkProject({ ...heap, size: empty.size });
    expect(job).toBeNull();
    expect(stops).toContainEqual(expect.objectContaining({ kind: "back-zero" }));
  });

  test("roughly cut pieces lose an eighth of an inch on each edge, sewn ones nothing", () => {
    const block = leftoverOf({ kind: "block", width: inches(12), height: inches(12) }, "in");
    const rough: Project = {
      ...heap,
      heap: { ...heap.heap, cutting: "rough" },
      leftovers: [
        { ...strip, id: "a" },
        { ...block, id: "b" },
      ],
    };
    expect(draftOfProject(rough).pieces).toMatchObject([
      { width: inches(9, 4), height: inches(119, 4) },
      { width: inches(12), height: inches(12) },
    ]);
  });

  test("rough stock: nine tenths of the strips in lengths most have; a bag by its weight", () => {
    const rough: Project = {
      ...heap,
      leftovers: [],
      rough: [
        {
          id: "s",
          kind: "strips",
          fabric: "",
          colour: "",
          width: lengthAsMeasured(inches(5, 2), "in"),
          total: lengthAsMeasured(inches(324), "in"),
        },
        {
          id: "b",
          kind: "bag",
          fabric: "mixed",
          colour: "",
          weight: { text: "8 oz", unit: "in", value: 226.8 },
        },
      ],
    };
    // 9 yd are 324 in; nine tenths of them 291.6, which are 14 strips of 20 in.
    expect(draftOfProject(rough).pieces).toEqual([
      { row: 1, kind: "strip", width: inches(5, 2), height: inches(20), count: 14 },
      { row: 2, kind: "crumbs", fabric: "mixed", weight: 226.8 },
    ]);
  });

  test("the hash is the job's alone: the title changes nothing, a count does", () => {
    const hash = (project: Project) => {
      const { job } = checkProject(project);
      return job && hashOfJob(job);
    };
    expect(hash({ ...heap, title: "other" })).toBe(hash(heap));
    const more = { ...strip, cells: withTypedCell(strip.cells, "count", "7", "in"), id: "good" };
    expect(hash({ ...heap, leftovers: [more] })).not.toBe(hash(heap));
  });
});
