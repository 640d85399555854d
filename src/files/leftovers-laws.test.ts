import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type DraftPiece,
  directions,
  type Fabric,
  grains,
  keeps,
  kinds,
  type Piece,
  uses,
} from "../engine/cloth/index.ts";
import { areaOf, cut, inches, length, unitsPerInch } from "../engine/length/index.ts";
import { asDraft, readLeftovers, writeLeftovers } from "./index.ts";

const utf8 = (text: string) => new TextEncoder().encode(text);
const unit = fc.constantFrom("in" as const, "cm" as const);

// What a person can type into a cell: no control characters, no space at the ends, not nothing.
const typed = fc
  .string({ unit: "grapheme", minLength: 1, maxLength: 30 })
  .filter((text) => text.trim() === text && !/[\p{Cc}\ufffd]/u.test(text) && text !== "");
const awkward = fc.constantFrom(
  '"',
  '2" strip',
  "a,b;c\td".replace("\t", " "),
  "=1+1",
  "'",
  '""',
  "two\nlines",
  "2-Jan",
);
const text = fc.oneof(typed, awkward);

// Mostly what a ruler shows, sometimes any 1/320 mm.
const size = fc
  .oneof(
    fc.integer({ min: 1, max: 400 * 8 }).map((eighths) => (eighths * unitsPerInch) / 8),
    fc.integer({ min: 1, max: 10_000 }).map((millimetres) => millimetres * 320),
    fc.integer({ min: 1, max: 400 * unitsPerInch }),
  )
  .map((units) => length(units));
const area = fc
  .oneof(
    fc.integer({ min: 1, max: 160_000 }).map((squareInches) => squareInches * unitsPerInch ** 2),
    fc.integer({ min: 1, max: 2 ** 52 }),
  )
  .map(areaOf);

const optional = {
  fabric: typed,
  colour: typed,
  name: text,
  keep: fc.constantFrom(...keeps),
  use: fc.constantFrom(...uses),
  direction: fc.constantFrom(...directions),
  grain: fc.constantFrom(...grains),
  washed: fc.boolean(),
  cloth: typed,
};
const count = fc.integer({ min: 1, max: 5000 });
const sized = fc.record(
  {
    kind: fc.constantFrom(...kinds.filter((kind) => kind !== "crumbs")),
    width: size,
    height: size,
    count,
    ...optional,
  },
  { requiredKeys: ["kind", "width", "height", "count"] },
);
const crumbs = fc.record(
  {
    kind: fc.constant("crumbs" as const),
    area,
    count,
    weight: fc.integer({ min: 1, max: 90_000 }),
    ...optional,
  },
  { requiredKeys: ["kind", "area", "count"] },
);
const pieces = fc
  .array(fc.oneof({ weight: 4, arbitrary: sized }, { weight: 1, arbitrary: crumbs }), {
    minLength: 1,
    maxLength: 12,
  })
  .map((rows): DraftPiece[] => rows.map((row, index) => ({ ...row, row: index + 2 })));

describe("what is written is read back the same", () => {
  test("any table, in either unit", () => {
    fc.assert(
      fc.property(pieces, unit, (rows, shown) => {
        const { pieces: read, problems, others } = readLeftovers(utf8(writeLeftovers(rows, shown)), shown);
        expect(problems).toEqual([]);
        expect(others).toEqual([]);
        expect(read).toEqual(rows);
      }),
      { numRuns: 500 },
    );
  });

  test("columns of others too", () => {
    const heading = fc.constantFrom("bought at", "note, long", "Größe");
    const cells = fc.array(text, { minLength: 2, maxLength: 2 });
    fc.assert(
      fc.property(heading, cells, unit, (name, [first = "", second = ""], shown) => {
        const rows: DraftPiece[] = [2, 3].map((row) => ({
          row,
          kind: "square",
          width: inches(3),
          height: inches(3),
          count: 1,
        }));
        const kept = [
          {
            heading: name,
            cells: new Map([
              [2, first],
              [3, second],
            ]),
          },
        ];
        const read = readLeftovers(utf8(writeLeftovers(rows, shown, kept)), shown);
        expect(read.problems).toEqual([]);
        expect(read.others).toEqual(kept);
      }),
    );
  });

  test.each(
    readdirSync(new URL("../../test/data/heaps/", import.meta.url)).filter((file) => file.endsWith(".csv")),
  )("%s", (file) => {
    const table = readLeftovers(
      readFileSync(new URL(`../../test/data/heaps/${file}`, import.meta.url)),
      "in",
    );
    for (const shown of ["in", "cm"] as const) {
      expect(readLeftovers(utf8(writeLeftovers(table.pieces, shown)), shown)).toEqual(table);
    }
  });

  test("a checked job's pieces, fabrics and colours by name", () => {
    const fabrics: Fabric[] = [{ id: "f1", name: "teal", colour: "#006c6d", colours: [] }];
    const facts = {
      count: 4,
      fabric: "f1",
      use: "yes",
      direction: "none",
      grain: "unknown",
      cloth: "",
      name: "",
    } as const;
    const job: Piece[] = [
      {
        ...facts,
        id: "strip-1",
        kind: "strip",
        width: cut(inches(5, 2)),
        height: cut(inches(20)),
        keep: "cut",
        washed: true,
      },
      {
        ...facts,
        id: "crumbs-1",
        kind: "crumbs",
        area: areaOf(320 ** 2),
        keep: "trim",
        washed: null,
        count: 1,
      },
    ];
    expect(writeLeftovers(asDraft(job, fabrics), "in")).toBe(
      [
        "kind,width,height,count,fabric,colour,keep,use,direction,grain,washed,area",
        "strip,2 1/2,20,4,teal,#006c6d,cut,yes,none,unknown,yes,",
        "crumbs,,,1,teal,#006c6d,trim,yes,none,unknown,,1 mm²",
        "",
      ].join("\n"),
    );
  });
});

const tables = readdirSync(new URL("../../test/data/heaps/", import.meta.url))
  .filter((file) => file.endsWith(".csv"))
  .map((file) => readFileSync(new URL(`../../test/data/heaps/${file}`, import.meta.url), "utf8"));

const strays = [
  ",",
  ";",
  "\t",
  '"',
  "\n",
  " ",
  ".",
  "/",
  "-",
  "0",
  "7",
  "½",
  "x",
  "ü",
  "\ufffd",
  "\u0001",
  "2-Jan",
  "1,5",
  "#",
  "(",
];

/** A slip of the hand: something put in, taken out, put in another's place, or a row doubled. */
const slip = fc.record({
  kind: fc.constantFrom("insert", "remove", "replace", "double-row"),
  at: fc.integer({ min: 0, max: 999_999 }).map((millionth) => millionth / 1_000_000),
  stray: fc.constantFrom(...strays),
  length: fc.integer({ min: 1, max: 4 }),
});

function slipped(
  table: string,
  slips: readonly (typeof slip extends fc.Arbitrary<infer S> ? S : never)[],
): string {
  return slips.reduce((now, { kind, at, stray, length: removed }) => {
    const place = Math.floor(at * now.length);
    const [before, after] = [now.slice(0, place), now.slice(place)];
    switch (kind) {
      case "insert":
        return before + stray + after;
      case "remove":
        return before + after.slice(removed);
      case "replace":
        return before + stray + after.slice(1);
      default: {
        const rows = now.split("\n");
        const row = rows[Math.floor(at * rows.length)] ?? "";
        return [...rows, row].join("\n");
      }
    }
  }, table);
}

/** The oracle: a size as a child would add it up; null where it is not plainly a number of inches. */
function plainSize(cell: string): number | null {
  const found = /^(\d{1,3})?(?:(?:^| +)(\d{1,2})\/(\d{1,2}))?$/.exec(cell);
  if (found === null || cell === "") return null;
  const [, whole = "0", over = "0", under = "1"] = found;
  return Math.floor((Number(whole) + Number(over) / Number(under)) * unitsPerInch + 1e-6);
}

const headings = [
  "kind",
  "width",
  "height",
  "count",
  "fabric",
  "colour",
  "name",
  "keep",
  "direction",
] as const;

/** Holds a piece against the row it claims to be, cell by cell, where the row splits plainly at its commas. */
function expectRead(piece: DraftPiece, line: string): void {
  const cells = line.split(",").map((cell) => cell.trim());
  expect(cells.slice(headings.length).join("")).toBe("");
  const cell = (heading: (typeof headings)[number]) => cells[headings.indexOf(heading)] ?? "";
  for (const heading of ["fabric", "colour", "name", "keep"] as const) {
    const said = piece[heading] ?? "";
    if (heading !== "keep") expect(said).toBe(cell(heading));
  }
  expect(
    cell("kind")
      .toLowerCase()
      .replace(/[\s_-]/g, ""),
  ).toContain((piece.kind ?? "").replaceAll("-", "").replace(/s$/, ""));
  for (const side of ["width", "height"] as const) {
    const size = plainSize(cell(side));
    if (size !== null) expect(piece[side]).toBe(size);
  }
  if (/^\d{1,4}$/.test(cell("count"))) expect(piece.count).toBe(Number(cell("count")));
}

describe("mutated tables", () => {
  test("every row is read right or named, and nothing is thrown", () => {
    let readRows = 0;
    let namedRows = 0;
    const property = fc.property(
      fc.constantFrom(...tables),
      fc.array(slip, { minLength: 1, maxLength: 6 }),
      fc.boolean(),
      (table, slips, isLatin) => {
        const written = slipped(table, slips);
        const bytes =
          isLatin && /^[\0-\xff]*$/.test(written)
            ? Uint8Array.from(written, (c) => c.charCodeAt(0))
            : utf8(written);
        const { pieces: read, problems } = readLeftovers(bytes, "in");
        const lines = written.split("\n");
        const first = lines.findIndex((line) => !/^[\s,;"]*$/.test(line));
        if (problems.some((problem) => !("row" in problem))) {
          // The whole table is refused only where its headings were hit.
          expect(read).toEqual([]);
          expect(problems).toHaveLength(1);
          expect(lines[first]?.trim()).not.toBe(headings.join(","));
          return;
        }
        if (lines[first] !== headings.join(",")) return;
        const named = new Set(problems.map((problem) => ("row" in problem ? problem.row : 0)));
        for (const [index, line] of lines.entries()) {
          if (index <= first || /^[\s,;"]*$/.test(line)) continue;
          const piece = read.find(({ row }) => row === index + 1);
          expect(piece !== undefined || named.has(index + 1), `row ${index + 1}: ${line}`).toBe(true);
          expect(piece !== undefined && named.has(index + 1)).toBe(false);
          if (piece !== undefined && !line.includes('"')) expectRead(piece, line);
          if (piece === undefined) namedRows++;
          else readRows++;
        }
      },
    );
    // Without bias: biased places crowd at the headings.
    fc.assert(property, { numRuns: 1000, unbiased: true });
    // The slips are few: most rows stay good, and enough are hit.
    expect(readRows).toBeGreaterThan(5 * namedRows);
    expect(namedRows).toBeGreaterThan(500);
  });

  test("any bytes at all give rows or one problem of the file", () => {
    const bytes = fc.oneof(
      fc.uint8Array({ maxLength: 2000 }),
      fc
        .uint8Array({ maxLength: 400 })
        .map((noise) => Uint8Array.from([...utf8("kind,width,height\n"), ...noise])),
      fc.uint8Array({ maxLength: 400 }).map((noise) => Uint8Array.from([0xff, 0xfe, ...noise])),
    );
    fc.assert(
      fc.property(bytes, unit, (file, shown) => {
        const { pieces: read, problems } = readLeftovers(file, shown);
        expect(read.length + problems.length).toBeGreaterThan(0);
        expect(problems.length === 1 || problems.every((problem) => "row" in problem)).toBe(true);
      }),
      { numRuns: 1000 },
    );
  });
});
