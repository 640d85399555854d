import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { kinds, uses } from "../engine/cloth/index.ts";
import { areaOf, type DisplayUnit, formatSize, length, unitsPerInch } from "../engine/length/index.ts";
import { type LineProblem, type LineReading, lineFields, longestLine, readLine, writeLine } from "./index.ts";

// Sizes of cloth cut at the bolt: a fat quarter is 18 × 20 to 22 in practice and 18 × 21 of cloth that is 42 in wide,
// a long quarter 9 × 42 (community sources). All other readings: common practice, by hand.

const plain = (text: string) => text.replace(/[\u202f\u00a0]/g, " ");

/** What was understood, as one would read it back. */
function told({ piece, rough, look }: LineReading, unit: DisplayUnit): string {
  const { width, height, area, weight } = piece;
  const sides = width !== undefined && height !== undefined ? formatSize({ width, height }, { unit }) : "";
  const words = [
    piece.count,
    piece.kind,
    sides,
    area && `${Math.round(area / unitsPerInch ** 2)} sq in`,
    weight && `${Math.round(weight)} g`,
    rough && `${rough.total / unitsPerInch} in of ${rough.width / unitsPerInch} in`,
    piece.fabric && `[${piece.fabric}]`,
    piece.colour,
    piece.use,
    look && `like ${look}`,
  ];
  return plain(
    words.filter((word) => word !== undefined && word !== null && word !== "" && word !== 0).join(" "),
  );
}

describe("lines in inches", () => {
  test.each([
    ["4 strips 2 1/2 x 31 teal dots", "4 strip 2½ × 31 in [teal dots] like teal"],
    ["12 blocks 6½", "12 block 6½ × 6½ in"],
    ["12 blocks of 6½", "12 block 6½ × 6½ in"],
    ["3 hsts 3", "3 half-square-triangle 3 × 3 in"],
    ["3 half-square triangles 3", "3 half-square-triangle 3 × 3 in"],
    ["8 half square triangles, 3 1/2, rust", "8 half-square-triangle 3½ × 3½ in [rust] like #a5532d"],
    ["fat quarter red", "18 × 21 in [red] like #b5322f"],
    ["3 x fat quarter moss", "3 18 × 21 in [moss] like #6f7d4f"],
    ["2 fqs oat", "2 18 × 21 in [oat] like #e6dcc8"],
    ["fat eighth rust", "9 × 21 in [rust] like #a5532d"],
    ["long quarter navy", "9 × 42 in [navy] like #26365c"],
    ["half yard oat", "18 × 42 in [oat] like #e6dcc8"],
    ["2 half yards oat", "2 18 × 42 in [oat] like #e6dcc8"],
    ["2 yd oat", "42 × 72 in [oat] like #e6dcc8"],
    ["1 1/8 yd oat", "42 × 40½ in [oat] like #e6dcc8"],
    ["length 1 yd oat", "length 42 × 36 in [oat] like #e6dcc8"],
    ["strip 2.5 x wof", "strip 2½ × 42 in"],
    ["4 strips 2 1/2 x width of fabric teal", "4 strip 2½ × 42 in [teal] like teal"],
    ["4 wof strips 2 1/2 blue", "4 strip 2½ × 42 in [blue] like #3f6296"],
    ["wof x 2 1/2 red", "42 × 2½ in [red] like #b5322f"],
    ["2 triangles 5 7/8 oat", "2 triangle 5⅞ × 5⅞ in [oat] like #e6dcc8"],
    ["triangles 5 7/8 x 4 oat", "triangle 5⅞ × 4 in [oat] like #e6dcc8"],
    ["1 length 42 x 70 cream", "1 length 42 × 70 in [cream] like #f2e8cf"],
    ["crumbs 6 oz", "crumbs 170 g"],
    ["bag 12 oz", "crumbs 340 g"],
    ["bag of scraps 1 lb 4 oz", "crumbs 567 g"],
    ["crumbs 120 sq in red", "crumbs 120 sq in [red] like #b5322f"],
    ["6 oz rust crumbs", "crumbs 170 g [rust] like #a5532d"],
    ["9 cm x 30 cm blue stripe 5", "5 3 35⁄64 × 11 13⁄16 in [blue stripe] like #3f6296"],
    ["teal 2 1/2x31 x4", "4 2½ × 31 in [teal] like teal"],
    ["4 x 2 1/2 x 31 teal", "4 2½ × 31 in [teal] like teal"],
    ["2 1/2 x 31 x 4 teal", "4 2½ × 31 in [teal] like teal"],
    ["4x 2½″ × 31″ teal", "4 2½ × 31 in [teal] like teal"],
    ["4strips 2½x31 teal", "4 strip 2½ × 31 in [teal] like teal"],
    ["4 strips 2-1/2 by 31", "4 strip 2½ × 31 in"],
    ["4 strips 2 ½ x 31", "4 strip 2½ × 31 in"],
    ['2.5" x 31" teal', "2½ × 31 in [teal] like teal"],
    ["4 in x 4 in squares", "square 4 × 4 in"],
    ["10 5 in squares", "10 square 5 × 5 in"],
    ["12 6 squares", "12 square 6 × 6 in"],
    ["12 6 x 6", "12 6 × 6 in"],
    ["12 6 1/2 x 6 1/2", "12 6½ × 6½ in"],
    ["4 1/2 x 31", "4½ × 31 in"],
    ["squares 5", "square 5 × 5 in"],
    ["a dozen 5 in squares grey", "12 square 5 × 5 in [grey] like grey"],
    ["one length 42 x 30", "1 length 42 × 30 in"],
    ["a strip 2 x 30", "1 strip 2 × 30 in"],
    ["hst 3 1/2 x 3 1/2 rust (8)", "8 half-square-triangle 3½ × 3½ in [rust] like #a5532d"],
    ["strips 2 1/2 x 31, 4 pieces, teal", "4 strip 2½ × 31 in [teal] like teal"],
    ["4 pieces 3 x 5 dark green leaves", "4 3 × 5 in [dark green leaves] like darkgreen"],
    ["teal: 4 strips 2 1/2 x 31", "4 strip 2½ × 31 in [teal] like teal"],
    ["4 - 2 1/2 x 31 - teal", "4 2½ × 31 in [teal] like teal"],
    ["6 strips teal 2 1/2 x 31 batik", "6 strip 2½ × 31 in [teal batik] like teal"],
    ["4 strips 2 x 30 blue stripe 5", "4 strip 2 × 30 in [blue stripe 5] like #3f6296"],
    ["1 part block 6 1/2 x 12 1/2", "1 part-block 6½ × 12½ in"],
    ["3 half blocks 6 x 12", "3 part-block 6 × 12 in"],
    ["orphan block 9.5", "block 9½ × 9½ in"],
    ["odd piece 7 x 9", "odd 7 × 9 in"],
    ["2 rectangles 7 1/2 x 11 ink", "2 rectangle 7½ × 11 in [ink] like #2b3444"],
    ["2 x 40 1930s print", "2 × 40 in [1930s print]"],
    ["3 squares 5 may queen", "3 square 5 × 5 in [may queen]"],
    ["4 strips 2 x 30 blue squares", "4 strip 2 × 30 in [blue squares] like #3f6296"],
    ["blue squares, 4 strips 2 x 30", "4 strip 2 × 30 in [blue squares] like #3f6296"],
    ['5 squares 5" "2 yellow"', "5 square 5 × 5 in [2 yellow] like #e5c04b"],
    ['2 pieces 1/8 x 14 "7/8"', "2 ⅛ × 14 in [7/8]"],
    ["5x5 squares #3e4257 7", "7 square 5 × 5 in #3e4257"],
    ["4 strips 2 1/2 x 31 teal use first", "4 strip 2½ × 31 in [teal] first like teal"],
    ["block 9 1/2 keep back", "block 9½ × 9½ in keep-back"],
    ["2 ft 6 in x 3 ft", "30 × 36 in"],
    ["2 1/2 x 1 yd navy", "2½ × 36 in [navy] like #26365c"],
    ["63 mm x 31 cm", "2 31⁄64 × 12 13⁄64 in"],
    ["about 9 yd of 2½ in strips", "strip 324 in of 2.5 in"],
    ["9 yd of 2 1/2 in teal", "324 in of 2.5 in [teal] like teal"],
    ["six squares of clay-red, five inches", "6 square 5 × 5 in [clay-red] like #b5694b"],
    ["three strips of navy, 2½ wide and about a yard long", "3 strip 2½ × 36 in [navy] like #26365c"],
    ["36 inches long by 2½ wide", "36 × 2½ in"],
    ["2½ wide x 30 long, rust", "2½ × 30 in [rust] like #a5532d"],
    ["five nine-patch blocks, 6½ inches", "5 block 6½ × 6½ in [nine-patch]"],
    ["twenty five inch squares, mixed", "20 square 5 × 5 in [mixed]"],
    ["twenty-five squares, 4 inches", "25 square 4 × 4 in"],
    ["nine two-and-a-half inch squares of rust", "9 square 2½ × 2½ in [rust] like #a5532d"],
    ["2 and three quarters by thirty-one", "2¾ × 31 in"],
    ["2 and a half x 31", "2½ × 31 in"],
    ["half a dozen squares 4", "6 square 4 × 4 in"],
    ["two dozen 4 inch squares", "24 square 4 × 4 in"],
    ["4 squares of six-inch stars", "4 square 6 × 6 in [stars]"],
    ["two-tone stripe 4 x 6", "4 × 6 in [two-tone stripe]"],
    ['2 strips 3 x 30 "two by two"', "2 strip 3 × 30 in [two by two]"],
    ["one yard of oatmeal linen", "42 × 36 in [oatmeal linen] like #d9cdb8"],
    ["half a yard of oat", "18 × 42 in [oat] like #e6dcc8"],
    ["one long strip cream, 4 by 60", "1 strip 4 × 60 in [cream] like #f2e8cf"],
    ["the end of a bolt, rust, 14 by 42", "14 × 42 in [rust] like #a5532d"],
    ["a piece of denim, 11 x 19", "1 11 × 19 in [denim] like #41587a"],
    [
      "eight half square triangles, rust, 4½ unfinished",
      "8 half-square-triangle 4½ × 4½ in [rust] like #a5532d",
    ],
  ])("%s", (line, expected) => {
    const reading = readLine(line, "in");
    expect(reading.problems).toEqual([]);
    expect(told(reading, "in")).toBe(expected);
  });
});

describe("lines in centimetres", () => {
  test.each([
    ["4 strips 6.5 x 80 teal", "4 strip 6.5 × 80 cm [teal] like teal"],
    ["4 strips 6,5 x 80 teal", "4 strip 6.5 × 80 cm [teal] like teal"],
    ["9 x 30 blue stripe 5", "5 9 × 30 cm [blue stripe] like #3f6296"],
    ["2 1/2 in x 80 cm", "6.35 × 80 cm"],
    ["2 1/2 in x 31", "6.35 × 78.74 cm"],
    ["9 x 300 mm", "0.9 × 30 cm"],
    ["fat quarter grey", "50 × 53.5 cm [grey] like grey"],
    ["half metre oat", "50 × 107 cm [oat] like #e6dcc8"],
    ["sechs Quadrate lehmrot, fünf zoll", "6 square 12.7 × 12.7 cm [lehmrot]"],
    ["fünfundzwanzig Quadrate 10 cm", "25 square 10 × 10 cm"],
    ["1.5 m oat", "107 × 150 cm [oat] like #e6dcc8"],
    ["strip 6.5 x wof", "strip 6.5 × 107 cm"],
    ["crumbs 85 g grey", "crumbs 85 g [grey] like grey"],
    ["crumbs 800 cm²", "crumbs 124 sq in"],
  ])("%s", (line, expected) => {
    const reading = readLine(line, "cm");
    expect(reading.problems).toEqual([]);
    expect(told(reading, "cm")).toBe(expected);
  });

  test("cloth of another width gives longer strips and larger fat quarters", () => {
    const habit = { clothWidth: length(44 * unitsPerInch) };
    expect(told(readLine("strip 2 1/2 x wof", "in", habit), "in")).toBe("strip 2½ × 44 in");
    expect(told(readLine("fat quarter", "in", habit), "in")).toBe("18 × 22 in");
  });
});

describe("what is not read as it stands", () => {
  const said = (problem: LineProblem): string => {
    switch (problem.kind) {
      case "not-a-size": {
        const { problem: why } = problem;
        const may =
          why.kind === "date"
            ? ` ${why.fraction}`
            : why.kind === "ambiguous"
              ? ` ${why.readings.join(" or ")}`
              : "";
        return `${problem.field} ${why.kind}${may}`;
      }
      case "no-size":
      case "one-side":
        return `${problem.kind} ${problem.pieceKind}`;
      case "not-square":
      case "three-numbers":
      case "not-a-count":
      case "extra-number":
      case "finished-size":
        return `${problem.kind} ${problem.text}`;
      case "no-amount":
      case "too-long":
        return problem.kind;
    }
  };

  test.each([
    ["4 strips 2-Jan x 31 teal", ["width date 1/2"]],
    ["4 strips Jan-02 x 31 teal", ["width date 1/2"]],
    ["4 strips 31 x 2-Jan teal", ["height date 1/2"]],
    ["1. Feb x 31", ["width date 1/2"]],
    ["Mar-16 x 31", ["width date 3/16"]],
    ["squares 2-Jan", ["width date 1/2"]],
    ["21/2 x 31 red", ["width ambiguous 2 1/2 or 10 1/2"]],
    ["4 strips 21/2 x 31 red", ["width ambiguous 2 1/2 or 10 1/2"]],
    ["1,500 x 40", ["width ambiguous 1.5 or 1500"]],
    ["crumbs 1,500 g", ["weight ambiguous 1.5 or 1500"]],
    ["-2 x 5", ["width negative"]],
    ["0 x 5", ["width zero"]],
    ["20000 x 5", ["width too-large"]],
    ["", ["no-size null"]],
    ["teal dots", ["no-size null"]],
    ["teal 5", ["no-size null"]],
    ["12 blocks", ["no-size block"]],
    ["strips 2 1/2", ["one-side strip"]],
    ["6½ teal", ["one-side null"]],
    ["2 part blocks 6 1/2", ["one-side part-block"]],
    ["crumbs", ["no-amount"]],
    ["crumbs 5 x 7", ["no-amount"]],
    ["3 strips 6 oz", ["no-size strip"]],
    ["10 x 5 in squares", ["not-square 10 x 5 in"]],
    ["5 x 5 x 4", ["three-numbers 5 x 5 x 4"]],
    ["0 strips 2 x 30", ["not-a-count 0"]],
    ["2.5 strips 3 x 5", ["not-a-count 2.5"]],
    ["4 blocks 6 finished", ["finished-size finished"]],
    ["2 1/2 x 31 teal 7/8", ["extra-number 7/8"]],
    ["2 1/2 wof strips 6 blue", ["extra-number 6"]],
    ["2 1/2 x 31 4 6", ["extra-number 4"]],
    ["x".repeat(longestLine + 1), ["too-long"]],
  ])("%s", (line, expected) => {
    expect(readLine(line, "in").problems.map(said)).toEqual(expected);
  });

  test("numbers in words never shorten a size unnoticed", () => {
    for (const line of [
      "2 and one sixteenth x 31",
      "4 strips 2 half x 31",
      "4 strips 31 x 2 three quarters",
    ]) {
      expect(readLine(line, "in").problems, line).not.toEqual([]);
    }
  });
});

describe("where it stands in the line", () => {
  test.each([
    ["4 strips 2 1/2 x 31 teal dots", "count 4|kind strips|width 2 1/2|height 31|fabric teal dots"],
    ["12 blocks 6½", "count 12|kind blocks|sides 6½"],
    ["3 x fat quarter moss", "count 3 x|named-size fat quarter|fabric moss"],
    ["strip 2.5 x wof", "kind strip|width 2.5|cloth-width wof"],
    ["2 yd oat", "height 2 yd|fabric oat"],
    ["crumbs 6 oz", "kind crumbs|weight 6 oz"],
    ["5x5 squares #3e4257 use first", "width 5|height 5|kind squares|colour #3e4257|use use first"],
    ["6 strips teal 2 x 31 batik", "count 6|kind strips|fabric teal|width 2|height 31|fabric batik"],
  ])("%s", (line, expected) => {
    const { parts } = readLine(line, "in");
    expect(parts.map(({ is, text }) => `${is} ${text}`).join("|")).toBe(expected);
  });
});

const piecesOfALine = fc.oneof(
  { weight: 9, arbitrary: fc.string({ unit: "grapheme", maxLength: 40 }) },
  {
    weight: 20,
    arbitrary: fc
      .array(
        fc.oneof(
          fc.constantFrom(
            "strips",
            "squares",
            "x",
            "×",
            "2 1/2",
            "21/2",
            "½",
            "5",
            "2-Jan",
            "1. Feb",
            "wof",
            "half",
            "six",
            "twenty",
            "five",
            "and a half",
            "wide",
            "long",
          ),
          fc.constantFrom(
            "fat",
            "quarter",
            "yd",
            "in",
            "cm",
            "oz",
            "g",
            "sq",
            '"',
            "“",
            "teal",
            "of",
            "and",
            "-",
            ",",
          ),
          fc.constantFrom(
            "crumbs",
            "a",
            "dozen",
            "#3e4257",
            "keep back",
            "0",
            "99999",
            "1,500",
            "(",
            ")",
            "\ud800",
          ),
        ),
        { maxLength: 14 },
      )
      .chain((words) => fc.constantFrom(" ", "", "  ").map((between) => words.join(between))),
  },
);

describe("laws", () => {
  test("whatever stands in a line, it is read without stumbling, and its parts lie in it one after another", () => {
    fc.assert(
      fc.property(piecesOfALine, fc.constantFrom<DisplayUnit>("in", "cm"), (line, unit) => {
        const { piece, parts, problems } = readLine(line, unit);
        let end = 0;
        for (const part of parts) {
          expect(part.start).toBeGreaterThanOrEqual(end);
          expect(part.text).toBe(line.slice(part.start, part.end));
          end = part.end;
        }
        for (const { start, end: last } of problems) expect(start >= 0 && last <= line.length).toBe(true);
        if (problems.length === 0) {
          expect(piece.area ?? piece.weight ?? piece.height ?? readLine(line, unit).rough).not.toBe(
            undefined,
          );
          expect(piece.count ?? 1).toBeGreaterThan(0);
        }
      }),
      { numRuns: 1000, examples: [["five#3e4257", "in"]] },
    );
  });

  test("a line without problems has no digit that was left out", () => {
    fc.assert(
      fc.property(piecesOfALine, (line) => {
        const { parts, problems } = readLine(line, "in");
        if (problems.length > 0) return;
        const covered = parts.reduce((rest, { start, end }) => {
          return rest.slice(0, start) + " ".repeat(end - start) + rest.slice(end);
        }, line);
        expect(covered).not.toMatch(/[\d½]/);
      }),
      { numRuns: 1000 },
    );
  });

  const side = fc.integer({ min: 127, max: 100 * unitsPerInch }).map(length);
  const onRuler = fc.integer({ min: 1, max: 800 }).map((eighths) => length(eighths * 1016));
  const name = fc
    .array(
      fc.constantFrom(
        "teal",
        "dots",
        "2",
        "7/8",
        "yd",
        "x",
        "strips",
        "fat",
        "quarter",
        "of",
        "Ida’s",
        "two",
        "by six",
        "piece of",
        "finished",
        "long",
        "5 in",
      ),
      {
        minLength: 1,
        maxLength: 4,
      },
    )
    .map((words) => words.join(" "));
  const facts = {
    count: fc.integer({ min: 1, max: 400 }),
    use: fc.constantFrom(...uses.filter((use) => use !== "yes")),
    fabric: name,
    colour: fc.integer({ min: 0, max: 0xffffff }).map((code) => `#${code.toString(16).padStart(6, "0")}`),
  };
  const sized = fc
    .record(
      {
        kind: fc.constantFrom(...kinds.filter((kind) => kind !== "crumbs")),
        width: fc.oneof(side, onRuler),
        height: fc.oneof(side, onRuler),
        ...facts,
      },
      { requiredKeys: ["width", "height", "count"] },
    )
    // Of a square both sides are one measure.
    .map((piece) =>
      piece.kind === "square" || piece.kind === "half-square-triangle"
        ? { ...piece, height: piece.width }
        : piece,
    );
  const { count: _, ...factsOfCrumbs } = facts;
  const crumbs = fc.oneof(
    fc.record(
      { kind: fc.constant("crumbs"), weight: fc.integer({ min: 1, max: 4000 }), ...factsOfCrumbs },
      { requiredKeys: ["kind", "weight"] },
    ),
    fc.record(
      {
        kind: fc.constant("crumbs"),
        area: fc.integer({ min: 1, max: 400 }).map((inches) => areaOf(inches * unitsPerInch ** 2)),
        ...factsOfCrumbs,
      },
      { requiredKeys: ["kind", "area"] },
    ),
  );

  test("what is written is read back the same", () => {
    fc.assert(
      fc.property(fc.oneof(sized, crumbs), fc.constantFrom<DisplayUnit>("in", "cm"), (piece, unit) => {
        const line = writeLine(piece, unit);
        const { piece: read, problems } = readLine(line, unit);
        expect(problems, line).toEqual([]);
        const fields = lineFields.filter((field) => piece[field as keyof typeof piece] !== undefined);
        for (const field of lineFields) {
          const expected = fields.includes(field) ? piece[field as keyof typeof piece] : undefined;
          expect(read[field], `${field} of ${line}`).toBe(expected);
        }
      }),
      { numRuns: 1000 },
    );
  });
});
