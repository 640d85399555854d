import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { areaOf, centimetres, inches, millimetres, unitsPerInch } from "../engine/length/index.ts";
import { columns, type RowProblem, readLeftovers, type TableProblem } from "./index.ts";

const heaps = new URL("../../test/data/heaps/", import.meta.url);
const utf8 = (text: string) => new TextEncoder().encode(text);
const read = (text: string, unit: "in" | "cm" = "in") => readLeftovers(utf8(text), unit);

/** One piece of a table with the given headings, and that it has no problem. */
function onePiece(table: string, unit: "in" | "cm" = "in") {
  const { pieces, problems } = read(table, unit);
  expect(problems).toEqual([]);
  expect(pieces).toHaveLength(1);
  return pieces[0];
}

const widthOf = (cell: string, unit: "in" | "cm" = "in") =>
  onePiece(`kind;width;height\nstrip;${cell};20`, unit)?.width;

const kindsOf = (problems: readonly TableProblem[]) => problems.map(({ kind }) => kind);

function onlyProblem(bytes: Uint8Array): TableProblem | undefined {
  const { pieces, problems } = readLeftovers(bytes, "in");
  expect(pieces).toEqual([]);
  expect(problems).toHaveLength(1);
  return problems[0];
}

describe("real heaps", () => {
  const index: { name: string; pieces: number; lengths: number }[] = JSON.parse(
    readFileSync(new URL("index.json", heaps), "utf8"),
  );

  test.each(index)("$name is read whole", ({ name, pieces, lengths }) => {
    const table = readLeftovers(readFileSync(new URL(`${name}.csv`, heaps)), "in");
    expect(table.problems).toEqual([]);
    const count = (kind: boolean) =>
      table.pieces
        .filter((piece) => (piece.kind === "length") === kind)
        .reduce((sum, piece) => sum + (piece.count ?? 0), 0);
    // The index counts lengths apart.
    expect(count(true)).toBe(lengths);
    expect(count(false)).toBe(pieces);
  });

  test("there are twelve of them", () => {
    expect(readdirSync(heaps).filter((file) => file.endsWith(".csv"))).toHaveLength(12);
  });

  test("a dense heap says which pieces may be cut", () => {
    const table = readLeftovers(readFileSync(new URL("dense/n60_r1_s1.csv", heaps)), "in");
    expect(table.problems).toEqual([]);
    expect(table.pieces.reduce((sum, { count = 0 }) => sum + count, 0)).toBe(60);
    expect(table.pieces[0]).toEqual({
      row: 2,
      kind: "strip",
      width: inches(5, 2),
      height: inches(21, 2),
      count: 1,
      fabric: "Cloth 8",
      colour: "#946473",
      name: "P1",
      keep: "cut",
    });
  });
});

describe("sizes", () => {
  test.each([
    ["2 1/2", inches(5, 2)],
    ["2.5", inches(5, 2)],
    ["2,5", inches(5, 2)],
    ["2½", inches(5, 2)],
    ["2,125", inches(17, 8)],
    ["63 mm", millimetres(63)],
    ["6.3 cm", centimetres(6.3)],
    ["6,3 cm", centimetres(6.3)],
    ["1 1/8 yd", inches(81, 2)],
  ])("%s", (cell, expected) => {
    expect(widthOf(cell)).toBe(expected);
  });

  test("a bare number takes the table's unit", () => {
    expect(widthOf("12", "cm")).toBe(centimetres(12));
    expect(widthOf("12", "in")).toBe(inches(12));
  });

  test("an inch mark needs no quotation marks round its cell", () => {
    expect(onePiece('kind,width,height\nstrip,2.5",10"')?.height).toBe(inches(10));
    expect(onePiece('kind,width,height\nstrip,"2 1/2""",10')?.width).toBe(inches(5, 2));
  });

  test("a decimal comma in a comma table stands in quotation marks", () => {
    expect(onePiece('kind,width,height\nstrip,"2,5",10')?.width).toBe(inches(5, 2));
  });

  test.each([
    [";", "1.500 mm"],
    [",", '"1,500 mm"'],
    ["\t", "1,500 mm"],
    ["\t", "1.500 mm"],
  ])("what may be thousands is not read (%j, %s)", (mark, cell) => {
    const { pieces, problems } = read(
      `${["kind", "width", "height"].join(mark)}\nstrip${mark}${cell}${mark}20`,
    );
    expect(pieces).toEqual([]);
    expect(problems).toMatchObject([{ row: 2, field: "width", problem: { kind: "ambiguous" } }]);
  });

  test("a square is known by one side, and so is a half-square triangle", () => {
    expect(onePiece("kind,width\nsquare,5")).toMatchObject({ width: inches(5), height: inches(5) });
    expect(onePiece("kind,width,height\nhst,,3")).toMatchObject({ width: inches(3), height: inches(3) });
  });

  test("a blank size is left to the job's check", () => {
    expect(onePiece("kind,width,height\nrectangle,5,")).toEqual({
      row: 2,
      kind: "rectangle",
      width: inches(5),
      count: 1,
    });
  });
});

describe("fractions that became dates", () => {
  test.each([
    ["2-Jan", "1/2"],
    ["02. Jan", "1/2"],
    ["1. Feb", "1/2"],
    ["Jan-64", "1/64"],
    ["8-Mar", "3/8"],
    ["1/2/2026", "1/2"],
    ["02.01.2026", "1/2"],
    ["2026-01-02", "1/2"],
    ["2026-01-02 00:00:00", "1/2"],
    // Days since 1899, where the date's format is lost: 2026-01-02, 2026-03-08.
    ["46024", "1/2"],
    ["46089", "3/8"],
  ])("%s is refused and %s named", (cell, fraction) => {
    for (const mark of [",", ";", "\t"]) {
      for (const unit of ["in", "cm"] as const) {
        const { pieces, problems } = read(
          `kind${mark}width${mark}height\nstrip${mark}${cell}${mark}20`,
          unit,
        );
        expect(pieces).toEqual([]);
        expect(problems).toEqual([
          { kind: "not-a-size", row: 2, field: "width", problem: { kind: "date", text: cell, fraction } },
        ]);
      }
    }
  });
});

describe("how a table is written", () => {
  const rows = [
    ["kind", "width", "height", "fabric"],
    ["square", "2,5", "2,5", "grün"],
    ["strip", "1", "20", "Öl"],
  ];
  const fabrics = (bytes: Uint8Array) => {
    const { pieces, problems } = readLeftovers(bytes, "in");
    expect(problems).toEqual([]);
    return pieces.map(({ fabric, width }) => [fabric, width]);
  };
  const expected = [
    ["grün", inches(5, 2)],
    ["Öl", inches(1)],
  ];
  const withMark = (mark: string, end: string) =>
    rows.map((cells) => cells.map((cell) => (cell.includes(mark) ? `"${cell}"` : cell)).join(mark)).join(end);
  const utf16 = (text: string, littleEndian: boolean) => {
    const view = new DataView(new ArrayBuffer(2 * text.length + 2));
    for (const [index, letter] of [..."\ufeff", ...text].entries()) {
      view.setUint16(2 * index, letter.charCodeAt(0), littleEndian);
    }
    return new Uint8Array(view.buffer);
  };
  const latin = (text: string) => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

  test.each([",", ";", "\t"])("delimiter %j with every line end", (mark) => {
    for (const end of ["\n", "\r\n", "\r"]) {
      expect(fabrics(utf8(withMark(mark, end)))).toEqual(expected);
      expect(fabrics(utf8(withMark(mark, end) + end))).toEqual(expected);
    }
  });

  test("UTF-8 with and without mark, UTF-16 both ways, Windows-1252", () => {
    const text = withMark(";", "\r\n");
    expect(fabrics(utf8(`\ufeff${text}`))).toEqual(expected);
    expect(fabrics(utf16(text, true))).toEqual(expected);
    expect(fabrics(utf16(text, false))).toEqual(expected);
    expect(fabrics(latin(text))).toEqual(expected);
  });

  test("Windows-1252 beyond Latin 1", () => {
    // 0x80 €, 0x93 “, 0x96 –, 0x9F Ÿ: WHATWG Encoding Standard, index windows-1252.
    const { pieces } = readLeftovers(latin("kind;width;name\nsquare;2;\x80 \x93\x96\x9f\xe4"), "in");
    expect(pieces[0]?.name).toBe("€ “–Ÿä");
    expect(readLeftovers(latin("kind;width\nsquare;2\xbd"), "in").pieces[0]?.width).toBe(inches(5, 2));
  });

  test("one spoilt byte in UTF-8 costs its own row, not the other umlauts", () => {
    const text = utf8("kind;width;fabric\nsquare;2;grün\nsquare;2;Öl\nsquare;2;X");
    const spoilt = Uint8Array.from([...text.slice(0, -1), 0xff]);
    const { pieces, problems } = readLeftovers(spoilt, "in");
    expect(pieces.map(({ fabric }) => fabric)).toEqual(["grün", "Öl"]);
    expect(problems).toMatchObject([{ kind: "unreadable-letter", row: 4, field: "fabric" }]);
  });

  test("a letter that was lost before is named, not taken for two others", () => {
    const { pieces, problems } = read("kind;width;fabric\nsquare;2;gr\ufffdn\nsquare;2;Öl");
    expect(pieces).toMatchObject([{ row: 3, fabric: "Öl" }]);
    expect(problems).toMatchObject([{ kind: "unreadable-letter", row: 2, field: "fabric" }]);
  });

  test("headings in any order, case and spacing; columns of others are kept and left alone", () => {
    const { pieces, problems, others } = read(
      " Width , KIND,bought at,Height ,Color,Qty\n2,Strip,a fair,20,teal,3\n3,strip,,21,,\n",
    );
    expect(problems).toEqual([]);
    expect(pieces).toMatchObject([
      { kind: "strip", width: inches(2), height: inches(20), colour: "teal", count: 3 },
      { width: inches(3), count: 1 },
    ]);
    expect(others).toEqual([{ heading: "bought at", cells: new Map([[2, "a fair"]]) }]);
  });

  test("rows are numbered as a spreadsheet shows them", () => {
    const { pieces } = read("\nkind,width\n\nsquare,2\n,,\nsquare,3\n");
    expect(pieces.map(({ row }) => row)).toEqual([4, 6]);
    const named = read("sep=;\nkind;width\nsquare;2,5\n");
    expect(named.pieces).toMatchObject([{ row: 2, width: inches(5, 2) }]);
  });

  test("empty columns at the end of every row are no cells too many", () => {
    const { pieces, problems } = read("kind,width,,\nsquare,2,,,,\nsquare,3,,,,\nsquare,4,,,,\n");
    expect(problems).toEqual([]);
    expect(pieces).toHaveLength(3);
  });

  test("an unquoted comma inside a value is noticed though the row ends in empty cells", () => {
    const { pieces, problems } = read(
      "kind,width,height,count,fabric,colour\nstrip,2,20,1,teal,\nstrip,2,5,10,1,teal,\nstrip,2,20,1,teal,\n",
    );
    expect(pieces.map(({ row }) => row)).toEqual([2, 4]);
    expect(problems).toEqual([{ kind: "too-many-cells", row: 3, cells: 7, headings: 6 }]);
  });

  test("a name may have commas, quotation marks and line breaks", () => {
    const { pieces, problems } = read(
      'kind,width,name\nsquare,2,"from ""Ida"", blue\nthe second"\nsquare,3,last\n',
    );
    expect(problems).toEqual([]);
    expect(pieces).toMatchObject([
      { row: 2, name: 'from "Ida", blue\nthe second' },
      { row: 3, name: "last" },
    ]);
  });
});

describe("words of few", () => {
  test.each([
    ["Strips", "strip"],
    ["SQUARE", "square"],
    ["half square triangle", "half-square-triangle"],
    ["Half-Square Triangles", "half-square-triangle"],
    ["HSTs", "half-square-triangle"],
    ["orphan blocks", "block"],
    ["part block", "part-block"],
    ["lengths", "length"],
    ["crumb", "crumbs"],
    ["Odd", "odd"],
  ])("kind %s", (cell, kind) => {
    expect(onePiece(`kind,width,height,area\n${cell},3,3,4`)?.kind).toBe(kind);
  });

  test("keep, use, direction, grain, washed", () => {
    const headings = "kind,width,keep,use,direction,grain,washed";
    expect(onePiece(`${headings}\nsquare,3,Whole,if needed,One Way,BIAS,Yes`)).toMatchObject({
      keep: "whole",
      use: "if-needed",
      direction: "one-way",
      grain: "bias",
      washed: true,
    });
    expect(onePiece(`${headings}\nsquare,3,cut,Keep back,stripes,long side,0`)).toMatchObject({
      keep: "cut",
      use: "keep-back",
      direction: "stripe",
      grain: "long-side",
      washed: false,
    });
  });

  test("another word is named with those that would do", () => {
    const { problems } = read("kind,width,washed\nsqare,2,maybe\n");
    expect(problems).toEqual([
      expect.objectContaining({ kind: "unknown-word", row: 2, field: "kind", text: "sqare" }),
      { kind: "unknown-word", row: 2, field: "washed", text: "maybe", known: ["yes", "no"] },
    ]);
  });

  test.each(["constructor", "toString", "__proto__", "hasOwnProperty"])("%s is no word", (text) => {
    expect(kindsOf(read(`kind,width,keep\n${text},2,${text}\n`).problems)).toEqual([
      "unknown-word",
      "unknown-word",
    ]);
    expect(read(`${text},kind,width\nx,square,2\n`).pieces).toHaveLength(1);
  });
});

describe("counts", () => {
  test.each([
    ["", 1],
    ["3", 3],
    ["3.0", 3],
    ["3,0", 3],
    // Whether these make sense is asked by the job's check.
    ["2.5", 2.5],
    ["-2", -2],
    ["0", 0],
    ["1e9", 1e9],
  ])("%j is %d", (cell, count) => {
    expect(onePiece(`kind;width;count\nsquare;2;${cell}`)?.count).toBe(count);
  });

  test.each(["three", "3 x", "1,000", "1.000", "0x10", "NaN", "Infinity", "1e999", "1/2", "3-Jan", "--3"])(
    "%s is named",
    (cell) => {
      expect(read(`kind;width;count\nsquare;2;${cell}`).problems).toEqual([
        { kind: "not-a-count", row: 2, field: "count", text: cell },
      ]);
    },
  );
});

describe("crumbs", () => {
  const squareInch = unitsPerInch ** 2;

  test("by area in the table's unit or their own", () => {
    expect(onePiece("kind,area\ncrumbs,120")?.area).toBe(areaOf(120 * squareInch));
    expect(onePiece("kind,area\ncrumbs,800 cm²", "in")?.area).toBe(areaOf(800 * 3200 ** 2));
    expect(onePiece("kind,area\ncrumbs,800", "cm")?.area).toBe(areaOf(800 * 3200 ** 2));
  });

  test("by weight: ounces beside inches, grams beside centimetres", () => {
    expect(onePiece("kind,weight\ncrumbs,4 oz")?.weight).toBeCloseTo(113.398, 3);
    expect(onePiece("kind,weight\ncrumbs,4", "in")?.weight).toBeCloseTo(113.398, 3);
    expect(onePiece("kind,weight\ncrumbs,120", "cm")?.weight).toBe(120);
    expect(onePiece("kind,weight\ncrumbs,120 g", "in")?.weight).toBe(120);
    expect(onePiece("kind,weight\ncrumbs,0.2 kg", "in")?.weight).toBe(200);
  });

  test("need no width, and a table of crumbs no column for one", () => {
    expect(onePiece("kind,width,height,area\ncrumbs,,,9")).toEqual({
      row: 2,
      kind: "crumbs",
      count: 1,
      area: areaOf(9 * squareInch),
    });
  });
});

describe("what is no table", () => {
  const bytes = (...values: number[]) => Uint8Array.from(values);
  const padded = (start: readonly number[]) =>
    Uint8Array.from([...start, ...Array.from({ length: 500 }, (_, at) => at % 256)]);

  test.each<[string, Uint8Array, TableProblem]>([
    ["nothing", bytes(), { kind: "empty-file" }],
    ["blank lines", utf8("\n \r\n\t\n"), { kind: "empty-file" }],
    ["a byte order mark", bytes(0xef, 0xbb, 0xbf), { kind: "empty-file" }],
    ["headings alone", utf8("kind,width,height\n\n,,\n"), { kind: "no-rows" }],
    ["a picture (PNG)", padded([0x89, 0x50, 0x4e, 0x47]), { kind: "not-a-table", looksLike: "picture" }],
    ["a picture (JPEG)", padded([0xff, 0xd8, 0xff, 0xe0]), { kind: "not-a-table", looksLike: "picture" }],
    [
      "a picture (HEIC)",
      padded([0, 0, 0, 24, 0x66, 0x74, 0x79, 0x70]),
      { kind: "not-a-table", looksLike: "picture" },
    ],
    ["a PDF", utf8("%PDF-1.7\n%\u00e2"), { kind: "not-a-table", looksLike: "pdf" }],
    ["a zip", padded([0x50, 0x4b, 3, 4]), { kind: "not-a-table", looksLike: "zip" }],
    [
      "a workbook",
      utf8("PK\u0003\u0004....xl/worksheets/sheet1.xml"),
      { kind: "not-a-table", looksLike: "spreadsheet" },
    ],
    ["an old workbook", padded([0xd0, 0xcf, 0x11, 0xe0]), { kind: "not-a-table", looksLike: "spreadsheet" }],
    ["NUL bytes", utf8("kind,width\nsquare,2\0\n"), { kind: "not-a-table", looksLike: "something-else" }],
    [
      "a web page",
      utf8("<!doctype html><title>kind,width</title>"),
      { kind: "not-a-table", looksLike: "something-else" },
    ],
    ["a plan", utf8('{ "format": "verso-plan" }'), { kind: "not-a-table", looksLike: "something-else" }],
    ["a letter", utf8("Dear Ida,\nhere they are.\n"), { kind: "no-kind-column", headings: ["Dear Ida"] }],
    [
      "kinds alone",
      utf8("kind,fabric\nstrip,teal\n"),
      { kind: "no-size-columns", headings: ["kind", "fabric"] },
    ],
    [
      "one heading twice",
      utf8("kind,width,color,colour\nsquare,2,red,blue\n"),
      { kind: "column-twice", field: "colour", headings: ["kind", "width", "color", "colour"] },
    ],
    ["a huge file", new Uint8Array(5_000_001), { kind: "file-too-large", bytes: 5_000_001, most: 5_000_000 }],
    [
      "too many rows",
      utf8(`kind,width\n${"square,2\n".repeat(20_001)}`),
      { kind: "too-many-rows", most: 20_000 },
    ],
  ])("%s", (_, file, problem) => {
    expect(onlyProblem(file)).toEqual(problem);
  });

  test("twenty thousand rows are read", () => {
    expect(read(`kind,width\n${"square,2\n".repeat(20_000)}`).pieces).toHaveLength(20_000);
  });
});

describe("bad rows never keep out good ones", () => {
  test("every problem is listed, and each good row is read", () => {
    const { pieces, problems } = read(
      [
        "kind,width,height,count,fabric",
        "square,2,2,3,teal",
        "strip,abc,0,x,teal",
        "strip,2,20,1,teal,extra",
        "strip,2,20,1,te\u0007al",
        ",2,20,1,teal",
        'strip,2,20,1,"teal',
        `strip,2,20,1,${"t".repeat(501)}`,
        "strip,2,20,1,teal",
      ].join("\n"),
    );
    expect(pieces.map(({ row }) => row)).toEqual([2, 9]);
    const found = problems.map((problem) => ["row" in problem ? problem.row : null, problem.kind]);
    expect(found).toEqual([
      [3, "not-a-size"],
      [3, "not-a-size"],
      [3, "not-a-count"],
      [4, "too-many-cells"],
      [5, "unreadable-letter"],
      [6, "no-kind"],
      [7, "stray-quote"],
      [8, "too-long"],
    ]);
  });

  test("a stray quotation mark swallows no row below it, though another one follows", () => {
    const { pieces, problems } = read(
      'kind,width,height,name\nstrip,2,20,"a\nstrip,3,21,b\nstrip,4,22,"c\nstrip,5,23,d"\nstrip,6,24,e\n',
    );
    expect(pieces.map(({ row }) => row)).toEqual([3, 5, 6]);
    expect(problems.map((problem) => "row" in problem && problem.row)).toEqual([2, 4]);
  });

  test("a column that is missing is said once", () => {
    const { pieces, problems } = read("kind,width\nstrip,2\nsquare,3\nrectangle,4\n");
    expect(pieces.map(({ kind }) => kind)).toEqual(["square"]);
    const missing: RowProblem = {
      kind: "column-missing",
      row: 2,
      field: "height",
      pieceKind: "strip",
      rows: 2,
    };
    expect(problems).toEqual([missing]);
  });

  test("every column of ours is known by its own name", () => {
    expect(columns.filter((column) => read(`${column},kind\n`).others.length > 0)).toEqual([]);
  });
});
