import { describe, expect, test } from "vitest";
import { inches } from "../../../engine/length/index.ts";
import {
  type Leftover,
  newProject,
  type Project,
  readLine,
  readTableRows,
  withTypedCell,
} from "../../../files/index.ts";
import { leftoversTexts } from "../../../words/index.ts";
import { columnAt, editedCell, editedRow, listColumns, shownCell } from "./cells.ts";
import { entryOf, kindShown, knownFabrics, pasted, shownColour } from "./entry.ts";
import { fabricChanges, greyOf, valueStrips } from "./fabricFacts.ts";
import { heapOf } from "./heap.ts";
import { cellsToMend, isLineOnly, restOfRow } from "./mending.ts";
import { previewOf, readingsIn, takenForGranted, withReading } from "./preview.ts";
import { reservedOf } from "./reserved.ts";
import { bagArea, bagOf, stripsOf } from "./roughStock.ts";
import { tableOf } from "./tableOut.ts";

const base = newProject({ title: "A back", createdAt: 0 });
const none = new Set<string>();
const read = (line: string) => readLine(line, "in");
const bytes = (text: string) => new TextEncoder().encode(text);
const texts = leftoversTexts("en-US", "in");
const plain = (text: string) => text.replace(/[\u202f\u00a0]/g, " ");
let number = 0;
const stored = (line: string): Leftover => {
  number += 1;
  const entry = entryOf(line, read(line), "in", none);
  if (entry?.kind !== "row") throw new Error("a line of these tests is no row");
  return { id: `row-${number}`, ...entry.row };
};

describe("a line becomes a row", () => {
  test("with what she typed, and the colour its name speaks of", () => {
    const line = " 4 strips 2 1/2 x 31 teal dots ";
    const entry = entryOf(line, read(line), "in", none);
    expect(entry).toMatchObject({
      kind: "row",
      row: {
        line: "4 strips 2 1/2 x 31 teal dots",
        cells: {
          kind: { value: "strip" },
          width: { text: "2 1/2", value: inches(5, 2) },
          count: { value: 4 },
          fabric: { value: "teal dots" },
          colour: { value: "teal" },
        },
      },
    });
  });

  test("a fabric that has a colour keeps it", () => {
    const line = "2 x 30 Teal  Dots";
    const known = knownFabrics({ ...base, leftovers: [stored("2 x 40 teal dots #0a7d7d")] });
    expect(entryOf(line, read(line), "in", known)).not.toHaveProperty("row.cells.colour");
  });

  test("nothing where something is wrong", () => {
    expect(entryOf("4 strips 2-Jan x 31", read("4 strips 2-Jan x 31"), "in", none)).toBeNull();
  });

  test("about so much of strips is stock without a list, as she wrote it", () => {
    const line = "about 9 yd of 2 1/2 in strips rust";
    expect(entryOf(line, read(line), "in", none)).toMatchObject({
      kind: "rough",
      stock: {
        kind: "strips",
        fabric: "rust",
        colour: "#a5532d",
        total: { text: "9 yd", value: inches(324) },
      },
    });
  });

  test("is drawn in the fabric's own colour before the one its name speaks of", () => {
    const project = { ...base, leftovers: [stored("2 x 40 teal dots #0a7d7d")] };
    expect(shownColour(read("2 x 30 teal dots"), project)).toBe("#0a7d7d");
    expect(shownColour(read("2 x 30 teal"), project)).toBe("#008080");
    expect(shownColour(read("2 x 30"), project)).toBeNull();
  });
});

describe("many at once", () => {
  test("good lines enter, bad ones wait as they were written", () => {
    const many = pasted(
      bytes("4 strips 2 1/2 x 31 teal\r\n\n  teal dots \nabout 9 yd of 2 in strips\n"),
      "in",
      none,
    );
    expect(many).toMatchObject({ waiting: 1, problem: null, rough: [{ kind: "strips" }] });
    expect(many.rows.map(({ line }) => line)).toEqual(["4 strips 2 1/2 x 31 teal", "teal dots"]);
    expect(many.rows[1]?.cells).toEqual({});
  });

  test("a colour is taken from a name once", () => {
    const { rows } = pasted(bytes("2 x 30 teal dots\n3 x 30 teal dots"), "in", none);
    expect(rows.map(({ cells }) => cells.colour?.text)).toEqual(["teal", undefined]);
  });

  test("a table is read as one, whatever parts its cells", () => {
    for (const mark of [",", ";", "\t"]) {
      const table = `kind,width,height,fabric\nstrip,2 1/2,31,teal\nsquare,2-Jan,5,rust`.replaceAll(
        ",",
        mark,
      );
      const { rows, waiting } = pasted(bytes(table), "in", none);
      expect([rows.length, waiting]).toEqual([2, 1]);
      expect(rows[1]?.cells.width).toMatchObject({ text: "2-Jan", value: null });
    }
  });

  test("in a table without a colour, fabrics take the ones their names speak of, once", () => {
    const { rows } = pasted(
      bytes("kind,width,height,fabric\nstrip,2,31,teal\nstrip,2,30,Teal\nblock,5,5,owls"),
      "in",
      none,
    );
    expect(rows.map(({ cells }) => cells.colour?.value)).toEqual(["teal", undefined, undefined]);
    const coloured = pasted(
      bytes("kind,width,height,fabric,colour\nblock,5,5,teal,\nblock,6,6,teal,#0a7d7d"),
      "in",
      none,
    );
    expect(coloured.rows.map(({ cells }) => cells.colour?.value)).toEqual([undefined, "#0a7d7d"]);
  });

  test("what is neither is said to be so", () => {
    expect(pasted(bytes("colour;amount\nteal;12\nrust;4"), "in", none).problem?.kind).toBe("no-kind-column");
    expect(pasted(new Uint8Array([0x89, 0x50, 0x4e, 0x47, 1, 2]), "in", none).problem?.kind).toBe(
      "not-a-table",
    );
    expect(pasted(bytes("kind,width,width\nstrip,1,2"), "in", none).problem?.kind).toBe("column-twice");
    expect(pasted(bytes("  \n "), "in", none).problem?.kind).toBe("empty-file");
  });

  test("one bad line alone waits like any other", () => {
    expect(pasted(bytes("something, not told"), "in", none)).toMatchObject({ waiting: 1, problem: null });
  });
});

describe("the drawing of a line", () => {
  test("is there when all is understood", () => {
    expect(previewOf(read("4 strips 2 1/2 x 31"))?.picture.shapes).toHaveLength(4);
    expect(previewOf(read("crumbs 6 oz"))?.picture.shapes).toHaveLength(1);
    for (const line of ["4 strips", "", "9 yd of 2 in strips", "2 x 20000"])
      expect(previewOf(read(line))).toBeNull();
  });

  test("what is taken for granted is told", () => {
    const told = (line: string) => {
      const taken = takenForGranted(read(line));
      return taken === null ? null : plain(texts.taken(taken));
    };
    expect(told("fat quarter red")).toBe("“fat quarter” is taken as 18 × 21 in. Measure yours, they differ.");
    expect(told("strip 2.5 x wof")).toBe("From selvage to selvage is taken as 42 in.");
    expect(told("2 yd oat")).toBe("From selvage to selvage is taken as 42 in.");
    expect(told("2 1/2 x 31")).toBeNull();
  });

  test("one of two readings goes where the other stood", () => {
    const line = "4 strips 21/2 x 31";
    const [problem] = read(line).problems;
    expect(problem && readingsIn(problem)).toEqual(["2 1/2", "10 1/2"]);
    expect(problem && withReading(line, problem, "2 1/2")).toBe("4 strips 2 1/2 x 31");
  });
});

describe("cells of the list", () => {
  const strip = stored("4 strips 2 1/2 x 31 teal");
  const shown = (leftover: Leftover) =>
    listColumns.map((place) => {
      const column = columnAt(place, leftover);
      return column === null ? null : plain(shownCell(column, leftover, "in", texts));
    });

  test("are set as a person writes them, and kept as she wrote them", () => {
    expect(shown(strip)).toEqual(["4", "strip", "2½", "31", "teal", ""]);
    expect(shown(stored("9 cm x 30 cm"))).toEqual(["1", "rectangle", "9 cm", "30 cm", "", ""]);
    expect(shown(stored("9 x 30 cm"))).toEqual(["1", "rectangle", "9 cm", "30 cm", "", ""]);
    expect(shown(stored("3 x fat quarter"))).toEqual(["3", "rectangle", "18", "21", "", ""]);
    expect(shown(stored("crumbs 6 oz red"))).toEqual([null, "crumbs", "6 oz", null, "red", ""]);
    expect(shown(stored("block 6 1/2 use first")).at(-1)).toBe("use first");
    expect(kindShown({ cells: {} })).toBeNull();
  });

  test("change one at a time; what can't be read changes nothing", () => {
    expect(editedCell(strip, "width", "3 1/4", "in")).toMatchObject({
      ok: true,
      change: { cells: { width: { text: "3 1/4", value: inches(13, 4) } } },
    });
    expect(editedCell(strip, "width", "2-Jan", "in")).toMatchObject({
      ok: false,
      fault: { kind: "not-a-size" },
    });
    expect(editedCell(strip, "fabric", " ", "in")).toEqual({ ok: true, change: { cells: { fabric: null } } });
  });

  test("change together, or their faults are known by column", () => {
    const { change, faults } = editedRow(
      strip,
      new Map([
        ["count", "6"],
        ["width", "half"],
      ] as const),
      "in",
    );
    expect([...faults.keys()]).toEqual(["width"]);
    expect(change.cells).toMatchObject({ count: { value: 6 } });
  });
});

describe("mending", () => {
  const rows = readTableRows(
    bytes("kind,width,height,count,fabric\nsqare,2-Jan,5,0,rust\nstrip,2 1/2,,3,teal"),
    "in",
  ).rows;
  const project: Project = {
    ...base,
    leftovers: rows.map((row, index) => ({ id: String(index), ...row })),
  };
  const { waiting } = heapOf(project);

  test("names each cell that keeps its row out, in the order of the table", () => {
    const cells = waiting.map((row) => cellsToMend(row, "in", texts));
    expect(cells.map((row) => row.map(({ column }) => column))).toEqual([["kind", "width"], ["height"]]);
    expect(cells[0]?.[1]?.why).toMatch(/^“2-Jan” looks like a date\. A spreadsheet may have changed 1\/2\./);
    expect(cells[1]?.[0]?.why).toBe("Nothing is written here. Add the size as cut.");
  });

  test("shows what else stands in the row", () => {
    expect(waiting.map((row) => restOfRow(row.leftover, cellsToMend(row, "in", texts)))).toEqual([
      "5 · 0 · rust",
      "strip · 2 1/2 · 3 · teal",
    ]);
    expect(waiting.map(({ leftover }) => isLineOnly(leftover))).toEqual([false, false]);
  });
});

describe("fabrics", () => {
  const project: Project = {
    ...base,
    leftovers: [stored("2 squares 5 black"), stored("2 squares 5 white"), stored("4 squares 5 oats")].map(
      (row, index) => ({
        ...row,
        cells:
          index === 2 ? row.cells : withTypedCell(row.cells, "colour", index === 0 ? "black" : "white", "in"),
      }),
    ),
    rough: [
      {
        id: "r",
        kind: "bag",
        fabric: "white",
        colour: "white",
        weight: { text: "3 oz", unit: "in", value: 85 },
      },
    ],
  };
  const { values, fabrics } = heapOf(project);

  test("lie from light to dark, each as wide as there is of it; without a colour nobody knows", () => {
    const strips = valueStrips(values);
    expect(strips.map(({ colour, grey }) => [colour, grey])).toEqual([
      ["#ffffff", "#ffffff"],
      ["#000000", "#000000"],
    ]);
    expect(strips[0]?.from).toBe(0);
    expect(strips.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1);
    expect(strips[1]?.from).toBeCloseTo(strips[0]?.share ?? Number.NaN);
  });

  test("a new colour goes to everything of that fabric", () => {
    const white = fabrics.find(({ fabric }) => fabric.name === "white");
    expect(white && fabricChanges(white, project, "#fffaf0")).toMatchObject({
      rows: [project.leftovers[1]?.id],
      rough: [{ id: "r", colour: "#fffaf0" }],
    });
    expect(white && greyOf(white.fabric)).toBe("#ffffff");
  });
});

describe("stock without a list", () => {
  test("strips of one width", () => {
    expect(stripsOf({ total: "9 yd", width: " 2 1/2", fabric: " teal " }, "in")).toMatchObject({
      ok: true,
      value: { fabric: "teal", colour: "teal", total: { text: "9 yd" }, width: { text: "2 1/2" } },
    });
    expect(stripsOf({ total: "", width: "2", fabric: "" }, "in")).toMatchObject({
      error: { field: "total" },
    });
    expect(stripsOf({ total: "9 yd", width: "2-Jan", fabric: "" }, "in")).toMatchObject({
      error: { field: "width", problem: { kind: "date" } },
    });
  });

  test("a bag by its weight: 300 sq in to the ounce (common practice)", () => {
    const bag = bagOf({ weight: "12 oz", fabric: "" }, "in");
    expect(bag.ok && plain(texts.stockBagArea(bagArea({ id: "b", ...bag.value }) ?? (0 as never)))).toBe(
      "About 3,600 sq in of cloth, a tenth more or less.",
    );
    expect(bagOf({ weight: "12", fabric: "" }, "in")).toMatchObject({ error: { kind: "no-unit" } });
  });
});

describe("put aside first", () => {
  const sized: Project = {
    ...base,
    size: {
      ...base.size,
      topWidths: [{ text: "60", unit: "in", value: inches(60) }, null, null],
      topHeights: [{ text: "80", unit: "in", value: inches(80) }, null, null],
    },
    leftovers: [stored("10 strips 2 1/2 x 42 teal"), stored("square 10 cream")],
    heap: { cutting: "clean", reserveBinding: true, reserveLabel: true, shelved: null },
  };
  const told = (project: Project) => {
    const { binding, label } = reservedOf(project);
    return [binding, label].map((one) => one && plain(texts.reserved(one)));
  };

  test("is told with its cloth", () => {
    expect(told(sized)).toEqual([
      "It takes 290 in of strips 2½ in wide. Put aside: 8 of 2½ × 42 in, teal.",
      "Put aside: 1 of 10 × 10 in, cream.",
    ]);
  });

  test("says what is missing, and what it waits for", () => {
    expect(told({ ...sized, leftovers: [] })).toEqual([
      "It takes 290 in of strips 2½ in wide. 290 in is missing, so nothing is put aside. Buy the binding, or choose a cloth for it later.",
      "No piece is large enough for a label.",
    ]);
    expect(told({ ...sized, size: base.size })[0]).toBe(
      "Give the size of the top first. Then the binding can be worked out.",
    );
    expect(told({ ...sized, heap: base.heap })).toEqual([null, null]);
  });
});

test("the table out is read back: every row, its kind told, her own columns with it", () => {
  const project: Project = {
    ...base,
    leftovers: [stored("4 strips 2 1/2 x 31 teal"), { ...stored("5 x 5 rust"), others: { box: "3" } }],
  };
  const bytesOut = tableOf(project);
  expect([...bytesOut.slice(0, 3)]).toEqual([0xef, 0xbb, 0xbf]);
  const { rows, problems } = readTableRows(bytesOut, "in");
  expect(problems).toEqual([]);
  expect(rows.map(({ cells, others }) => [cells.kind?.value, cells.width?.value, others])).toEqual([
    ["strip", inches(5, 2), {}],
    ["square", inches(5), { box: "3" }],
  ]);
});
