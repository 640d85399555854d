import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import {
  area,
  centimetres,
  cut,
  finished,
  inches,
  type Length,
  length,
  millimetres,
  roundDownTo,
  roundUpTo,
  toCut,
  toNumber,
} from "../length/index.ts";
import { blocksAlong, copingStrips } from "./coping.ts";
import { flippedGoose, geeseSquares, gooseSize } from "./flyingGeese.ts";
import { fourFinished, turnsIn } from "./fourHalfSquares.ts";
import { halfSquareCut, halfSquareFinished, halfSquareOfTriangles, halfSquareWays } from "./halfSquare.ts";
import { diagonalOf, largestOnPoint, onPointSetting, settingSquares, settingSquaresFor } from "./onPoint.ts";
import { hourglassOfTriangles, quarterSquareCut, quarterSquareFinished } from "./quarterSquare.ts";
import { roundsAbout } from "./rounds.ts";
import { slabSizes, slabsFrom, slabYield, usableOfCrumbs, usableOfSquares } from "./slabs.ts";
import {
  centreWithin,
  closeCornerSquares,
  cornerSquares,
  economy,
  squareInSquareFinished,
} from "./squareInSquare.ts";
import { rowOfSquares, stripSetDeep } from "./stripSets.ts";

const seam = inches(1, 4);
const eighth = inches(1, 8);
const inch = (size: number) => length(size * 8128);
const done = (size: number) => finished(inch(size));
const cutTo = (size: number) => cut(inch(size));
/** Up to the ruler's eighth, as the trade writes what is to be cut. */
const up = (size: Length) => toNumber(roundUpTo(size, eighth), "in");
const down = (size: Length) => toNumber(roundDownTo(size, eighth), "in");
const shown = (size: Length) => toNumber(size, "in");

describe("half-square triangles", () => {
  test.each([
    ["5a North Hampshire Quilters: two at a time", 3, 2, 3.875],
    ["5c J. Wickell, About.com: two at a time", 4, 2, 4.875],
    ["5d Craftsy, January 2014: eight at a time", 3, 8, 7.75],
    ["5e theashleytomlinson.com: eight at a time", 5, 8, 11.75],
    ["5j All People Quilt, 1 October 2019: the sky of a goose", 3, 2, 3.875],
  ] as const)("%s", (_, size, way, expected) => {
    expect(up(halfSquareCut(done(size), seam, way))).toBe(expected);
  });

  test("5a North Hampshire Quilters: cut 1/4 in over, 4 1/8 in, there is enough to trim to 3 1/2 in", () => {
    const over = halfSquareFinished(cutTo(4.125), seam);
    expect(shown(toCut(over, seam))).toBeGreaterThan(3.5);
    expect(shown(toCut(over, seam))).toBeLessThan(3.8);
  });

  test.each([
    ["5f theashleytomlinson.com: eight from 5 in squares, trimmed to 2; exact 2 1/8", 5, 8, 2.125],
    ["5g quilted-diary.com: eight from 6 in squares, 2 1/2; exact 2 5/8", 6, 8, 2.625],
    ["5i futurecat, 18 February 2018: four from 4 1/2 in squares, trimmed to 2 3/4", 4.5, 4, 2.75],
    ["5n Seymour Quilters Guild, 2021: eight from an 8 in square, 3 finished", 8, 8, 3.625],
    ["5n Seymour Quilters Guild, 2021: eight from a 7 in square, 2 1/2 finished, trimmed", 7, 8, 3.125],
  ] as const)("%s", (_, square, way, expected) => {
    expect(down(toCut(halfSquareFinished(cutTo(square), seam, way), seam))).toBe(expected);
  });

  test("5h r/quilting, 2025: four from 5 in squares, 3.18 in unfinished", () => {
    expect(shown(toCut(halfSquareFinished(cutTo(5), seam, 4), seam))).toBeCloseTo(3.18, 2);
    expect(shown(toCut(halfSquareFinished(cutTo(4.5), seam, 4), seam))).toBeCloseTo(2.83, 2);
  });

  // The rule (F + 1/2) ÷ 0.64 undercuts small ones and overcuts large ones (derived from r/quilting, 2025).
  test.each([
    [2, 3.91, 4.04],
    [4, 7.03, 6.86],
  ])("four at a time, %d in: not %d", (size, rule, exact) => {
    expect((size + 0.5) / 0.64).toBeCloseTo(rule, 2);
    expect(shown(halfSquareCut(done(size), seam, 4))).toBeCloseTo(exact, 2);
  });

  // tilkkutaiwas, March 2012: 3.5 seams always round up.
  test("the trade's 7/8 is the next eighth above the exact addition, whatever the size", () => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 200 }), (eighths) => {
        const size = finished(inches(eighths, 8));
        expect(up(halfSquareCut(size, seam))).toBe(eighths / 8 + 7 / 8);
        expect(up(halfSquareCut(size, seam, 8))).toBe(eighths / 4 + 7 / 4);
        expect(up(quarterSquareCut(size, seam))).toBe(eighths / 8 + 5 / 4);
      }),
    );
  });

  test("what is cut so gives its size, and a unit less does not", () => {
    const anySeam = fc.constantFrom(seam, inches(1, 2), millimetres(7.5));
    const anySize = fc.integer({ min: 2000, max: 200_000 }).map((size) => finished(length(size)));
    fc.assert(
      fc.property(anySize, anySeam, fc.constantFrom(...halfSquareWays), (size, allowance, way) => {
        const square = halfSquareCut(size, allowance, way);
        expect(halfSquareFinished(square, allowance, way)).toBeGreaterThanOrEqual(size);
        expect(halfSquareFinished(cut(length(square - 1)), allowance, way)).toBeLessThan(size);
      }),
    );
  });

  test("of two triangles is as of a square cut once", () => {
    expect(down(halfSquareOfTriangles(cutTo(3.875), seam))).toBe(3);
  });
});

describe("quarter-square triangles", () => {
  test("5b North Hampshire Quilters: 3 in from 4 1/4, cut over from 4 1/2", () => {
    expect(up(quarterSquareCut(done(3), seam))).toBe(4.25);
    expect(shown(quarterSquareFinished(cutTo(4.5), seam))).toBeGreaterThan(3.25);
  });

  test("four triangles with their long sides outside are as a square cut twice", () => {
    // A leg of such a triangle is the square's side ÷ √2.
    const leg = cut(length(Math.floor(cutTo(4.25) / Math.SQRT2)));
    expect(down(hourglassOfTriangles(leg, seam))).toBe(3);
  });

  test("what is cut so gives its size, and a unit less does not", () => {
    fc.assert(
      fc.property(fc.integer({ min: 2000, max: 200_000 }), (units) => {
        const square = quarterSquareCut(finished(length(units)), seam);
        expect(quarterSquareFinished(square, seam)).toBeGreaterThanOrEqual(units);
        expect(quarterSquareFinished(cut(length(square - 1)), seam)).toBeLessThan(units);
      }),
    );
  });
});

describe("flying geese", () => {
  // members.shaw.ca/beverlysquiltingpage and alinequilts, March 2011: four at a time, no waste.
  test.each([
    [1, 3.25, 1.875],
    [1.25, 3.75, 2.125],
    // One blog prints 1 1/2 + 7/8 = 2 1/4 for this row.
    [1.5, 4.25, 2.375],
    [1.75, 4.75, 2.625],
    [2, 5.25, 2.875],
    [2.25, 5.75, 3.125],
    [2.5, 6.25, 3.375],
    [2.75, 6.75, 3.625],
    [3, 7.25, 3.875],
    [3.5, 8.25, 4.375],
    [4, 9.25, 4.875],
  ])("%d in high", (height, large, small) => {
    const squares = geeseSquares(done(height), seam);
    expect([up(squares.large), up(squares.small)]).toEqual([large, small]);
  });

  test("5j All People Quilt, 1 October 2019: cut 7 1/4 and 3 7/8, the unit measures 6 1/2 × 3 1/2", () => {
    const { width, height } = gooseSize(done(3));
    expect([shown(toCut(width, seam)), shown(toCut(height, seam))]).toEqual([6.5, 3.5]);
    const { large, small } = geeseSquares(done(3), seam);
    expect([up(large), up(small)]).toEqual([7.25, 3.875]);
  });

  test("by stitch and flip, common practice", () => {
    const { rectangle, square } = flippedGoose(done(3), seam);
    expect([rectangle.width, rectangle.height, square].map(shown)).toEqual([6.5, 3.5, 3.5]);
  });

  // 5w weednstitch, 11 January 2012: 13.5 and 7.5 cm for 10 × 5. Its 3.5 and 2.5 round down, so they are short.
  test("5w in centimetres the remembered rules are short by 1.2 and 0.6 mm", () => {
    const { large, small } = geeseSquares(finished(centimetres(5)), millimetres(7.5));
    expect(toNumber(large, "cm") - 13.5).toBeCloseTo(0.12, 2);
    expect(toNumber(small, "cm") - 7.5).toBeCloseTo(0.06, 2);
    // Multiples of the seam, 3.5 and 5 times, round up (tilkkutaiwas, March 2012).
    expect(toNumber(large, "cm")).toBeLessThanOrEqual(10 + 3.75);
    expect(toNumber(small, "cm")).toBeLessThanOrEqual(5 + 2.625);
  });
});

describe("four half-square triangles", () => {
  test("5c J. Wickell, About.com: squares of 4 7/8, the pinwheel measures 8 1/2", () => {
    const one = finished(roundDownTo(halfSquareFinished(cutTo(4.875), seam), eighth));
    expect(shown(toCut(fourFinished(one), seam))).toBe(8.5);
  });

  test("5n Seymour Quilters Guild, 2021: 2 1/2 finished, the pinwheel 5", () => {
    expect(fourFinished(done(2.5))).toBe(done(5));
  });

  /** Which way the seam of a turn runs: at no turn it rises from left to right. */
  const rises = (turn: number) => turn % 2 === 0;

  test("in a pinwheel all seams run to the middle, and each is the one before turned", () => {
    expect(turnsIn.pinwheel.map(rises)).toEqual([false, true, true, false]);
    const [upperLeft, upperRight, lowerLeft, lowerRight] = turnsIn.pinwheel;
    const round = [upperLeft, upperRight, lowerRight, lowerLeft];
    expect(round.map((turn) => (turn + 1) % 4)).toEqual([...round.slice(1), upperLeft]);
  });

  test.each(["diamond", "broken-dishes"] as const)("in %s they make a square on its point", (pattern) => {
    expect(turnsIn[pattern].map(rises)).toEqual([true, false, false, true]);
  });

  test("a diamond has the first colour in all corners, broken dishes in two across from each other", () => {
    const outer = [0, 1, 3, 2];
    expect(turnsIn.diamond).toEqual(outer);
    expect(turnsIn["broken-dishes"].map((turn, at) => turn === outer[at])).toEqual([
      true,
      false,
      false,
      true,
    ]);
  });
});

describe("square in a square", () => {
  test("5k catbirdquilts, 26 January 2014: a 7 in economy block, centre 3 1/2 finished, corners 3.35", () => {
    const block = economy(done(3.5), seam);
    expect(block.finished).toBe(done(7));
    expect(shown(toCut(done(3.5), seam))).toBe(4);
    // It adds 7/8 where the exact addition is 0.8536, and divides by 1.414.
    expect(shown(block.inner)).toBeGreaterThan(3.35 - 0.025);
    expect(shown(block.inner)).toBeLessThanOrEqual(3.35);
    // Derived: the outer corners are its centre + 7/8.
    expect(up(block.outer)).toBe(4.375);
  });

  test.each([
    ["5l Quiltingboard, 12 October 2019", 5, 4.5],
    ["5m on-point chart, lukas.is-a-geek.org", 6, 5.125],
  ])("%s: round a centre of %d in", (_, size, corner) => {
    expect(up(closeCornerSquares(done(size), seam))).toBe(corner);
  });

  test("a centre that just touches, and one that floats", () => {
    const size = done(5);
    const close = squareInSquareFinished(size);
    expect(shown(close)).toBeCloseTo(7.071, 3);
    // Rounding of the block and of the corners, one unit each.
    expect(Math.abs(cornerSquares(size, close, seam) - closeCornerSquares(size, seam))).toBeLessThanOrEqual(
      2,
    );
    const wider = finished(length(close + 1000));
    expect(cornerSquares(size, wider, seam) - cornerSquares(size, close, seam)).toBe(1000);
  });

  test("the centre within a block, and the block about it", () => {
    fc.assert(
      fc.property(fc.integer({ min: 2000, max: 200_000 }), (units) => {
        const block = finished(length(units));
        const centre = centreWithin(block);
        expect(squareInSquareFinished(centre)).toBeLessThanOrEqual(block);
        expect(squareInSquareFinished(finished(length(centre + 1)))).toBeGreaterThanOrEqual(block);
      }),
    );
  });
});

describe("strips and squares", () => {
  test.each([
    ["5o generations-quilt-patterns.com", 4, 2.5, 8.5],
    ["5p pamelaquilts, June 2021", 4, 1, 2.5],
    ["5p pamelaquilts, June 2021", 4, 1.25, 3.5],
  ])("%s: %d strips of %d in", (_, count, wide, deep) => {
    const strips = Array.from({ length: count }, () => cutTo(wide));
    expect(shown(stripSetDeep(strips, seam))).toBe(deep);
  });

  test("strips of several widths: each seam takes two allowances", () => {
    expect(shown(stripSetDeep([cutTo(2.5), cutTo(1.5), cutTo(3)], seam))).toBe(6);
  });

  // Derived; strips and crosscut from quiltingmod.com, August 2017.
  test("5q a nine-patch of 2 in strips cut across at 2 in finishes 4 1/2", () => {
    expect(rowOfSquares(cutTo(2), 3, seam)).toBe(done(4.5));
  });
});

describe("rounds", () => {
  const rounds = (centre: number, widths: readonly number[], allowance: Length = seam) =>
    roundsAbout({ width: cutTo(centre), height: cutTo(centre) }, widths.map(cutTo), {
      seam: allowance,
      order: "log-cabin",
    });
  const repeated = (times: number, widths: readonly number[]) =>
    Array.from({ length: times }, () => widths).flat();

  test.each([
    [
      "5r Brunswick Quilters",
      rounds(3, repeated(3, [1.75, 1.75, 1.75, 1.75])),
      [3, 4.25, 4.25, 5.5, 5.5, 6.75, 6.75, 8, 8, 9.25, 9.25, 10.5],
      10.5,
    ],
    [
      "5s juliekquilts, October 2016: unequal logs",
      rounds(2, repeated(3, [1.25, 1.25, 2, 2])),
      [2, 2.75, 2.75, 4.25, 4.25, 5, 5, 6.5, 6.5, 7.25, 7.25, 8.75],
      8.75,
    ],
    [
      "5t cena.ladefoged.org: seams of 1/2 in",
      rounds(5, repeated(2, [3, 3, 3, 3]), inches(1, 2)),
      [5, 7, 7, 9, 9, 11, 11, 13],
      13,
    ],
  ])("%s", (_, { logs, unfinished }, lengths, side) => {
    expect(logs.map((log) => shown(log.length))).toEqual(lengths);
    expect([unfinished.width, unfinished.height].map(shown)).toEqual([side, side]);
  });

  test("5r finishes 10", () => {
    const { unfinished } = rounds(3, repeated(3, [1.75, 1.75, 1.75, 1.75]));
    expect(shown(unfinished.width) - 0.5).toBe(10);
  });

  // Book extract on drafting log cabin and courthouse steps (issuhub 22573): same totals.
  test("courthouse steps take the same cloth in another order", () => {
    const widths = repeated(2, [1.5, 1.5, 1.5, 1.5]).map(cutTo);
    const centre = { width: cutTo(3), height: cutTo(4) };
    const steps = roundsAbout(centre, widths, { seam, order: "courthouse-steps" });
    const cabin = roundsAbout(centre, widths, { seam, order: "log-cabin" });
    expect(steps.unfinished).toEqual(cabin.unfinished);
    expect(steps.logs.slice(0, 4).map(({ side, length }) => [side, shown(length)])).toEqual([
      ["top", 3],
      ["bottom", 3],
      ["left", 6],
      ["right", 6],
    ]);
  });
});

describe("coping strips", () => {
  test("5u Patchwork Times: ten 5 in blocks along 46 in are 4 over, so 2 finished and 2 1/2 cut a side", () => {
    const { count, over } = blocksAlong(done(46), done(5));
    expect([count, shown(over)]).toEqual([10, 4]);
    const coping = copingStrips(done(46), finished(length(done(46) + over)), { seam });
    expect(coping?.finished.map(shown)).toEqual([2, 2]);
    expect(coping?.cut.map(shown)).toEqual([2.5, 2.5]);
  });

  test("5v a tutorial on spacer borders: 20 1/2 to seven times 4 1/8, 4 3/16 a side, cut 4 11/16", () => {
    const coping = copingStrips(done(20.5), done(7 * 4.125), { seam });
    expect(coping?.finished.map(shown)).toEqual([4.1875, 4.1875]);
    expect(coping?.cut.map(shown)).toEqual([4.6875, 4.6875]);
  });

  test("on the ruler's step the second strip takes what is odd", () => {
    const coping = copingStrips(done(20.5), done(28.875), { seam, step: eighth });
    expect(coping?.finished.map(shown)).toEqual([4.125, 4.25]);
  });

  test("a block that fits or is too large has none", () => {
    expect(copingStrips(done(9), done(9), { seam })).toBeNull();
    expect(copingStrips(done(9.125), done(9), { seam })).toBeNull();
  });
});

describe("on point", () => {
  // On-point chart, lukas.is-a-geek.org; the 4 in row derived. It adds 7/8 and 1 1/4, a little more than is needed:
  // exact sizes come out at the chart's eighth or the one below it, never above.
  test.each([
    [4, 7, 3.75],
    [5, 8.375, 4.5],
    [6, 9.75, 5.125],
    [7, 11.25, 5.875],
    [8, 12.625, 6.625],
    [9, 14, 7.25],
    [10, 15.5, 8],
    [11, 16.875, 8.75],
    [12, 18.25, 9.375],
    [13, 19.75, 10.125],
    [14, 21.125, 10.875],
    [15, 22.5, 11.5],
    // With √2 for 1.414 the rule itself would give 24.
    [16, 23.875, 12.25],
  ])("a block of %d in", (size, side, corner) => {
    const squares = settingSquares(done(size), seam);
    for (const [exact, chart] of [
      [up(squares.side), side],
      [up(squares.corner), corner],
    ] as const) {
      expect(exact).toBeLessThanOrEqual(chart);
      expect(exact).toBeGreaterThanOrEqual(chart - 0.125);
    }
  });

  test.each([
    ["6a Moonlight Quilters; Math for quilters 2, March 2014", 6, 9.75, 5.125],
    ["16 of the chart", 16, 23.875, 12.25],
  ])("%s", (_, size, side, corner) => {
    const squares = settingSquares(done(size), seam);
    expect([up(squares.side), up(squares.corner)]).toEqual([side, corner]);
  });

  test("6b Pine Meadows Designs: 12 in, corners 9 3/8", () => {
    expect(up(settingSquares(done(12), seam).corner)).toBe(9.375);
  });

  // Derived: a line that just holds its blocks takes the squares of the chart; half an inch deeper, so much larger ones.
  test.each([3, 4, 7])("a line of %d", (count) => {
    const size = onPointSetting(done(12), 1, count).size;
    const close = settingSquaresFor({ block: done(12), count, size }, seam);
    expect([up(close.side), up(close.corner)]).toEqual([18.25, 9.375]);
    const deeper = { ...size, width: finished(length(size.width + inch(0.5))) };
    const roomy = settingSquaresFor({ block: done(12), count, size: deeper }, seam);
    expect([roomy.side - close.side, roomy.corner - close.corner]).toEqual([inch(0.5), inch(0.25)]);
  });

  // Derived: × 1.414 to the nearest eighth; a published chart agreed. It rounds both ways, so it is held to an eighth.
  test.each([
    [4, 5.625],
    [5, 7.125],
    [6, 8.5],
    [7, 9.875],
    [8, 11.375],
    [9, 12.75],
    [10, 14.125],
    [12, 17],
    [14, 19.75],
  ])("6c corner to corner of %d in", (size, diagonal) => {
    expect(Math.abs(shown(diagonalOf(done(size))) - diagonal)).toBeLessThanOrEqual(0.125);
  });

  test("a setting of 3 by 4, common practice", () => {
    const { size, blocks, sideTriangles, corners } = onPointSetting(done(6), 3, 4);
    expect([blocks, sideTriangles, corners]).toEqual([18, 10, 4]);
    expect(shown(size.width)).toBeCloseTo(3 * 6 * Math.SQRT2, 3);
    expect(shown(size.height)).toBeCloseTo(4 * 6 * Math.SQRT2, 3);
  });

  test("the largest block in a band stands in it, one unit more does not", () => {
    fc.assert(
      fc.property(fc.integer({ min: 2000, max: 200_000 }), (units) => {
        const { finished: block } = largestOnPoint(finished(length(units)), seam);
        expect(diagonalOf(block)).toBeLessThanOrEqual(units);
        expect(diagonalOf(finished(length(block + 1)))).toBeGreaterThan(units);
      }),
    );
  });
});

describe("slabs", () => {
  // Derived: ((s − 1/2) ÷ s)².
  test.each([
    [1.5, 44],
    [2, 56],
    [2.5, 64],
    [3.5, 73],
    [5, 81],
  ])("of squares cut %d in, %d % show", (side, percent) => {
    const share = usableOfSquares(cutTo(side), seam) / area(inch(side), inch(side));
    expect(Math.round(share * 100)).toBe(percent);
  });

  test("of odd crumbs 40 to 50 % show, common practice", () => {
    const bag = area(inch(30), inch(20));
    const share = usableOfCrumbs(bag) / bag;
    expect(share).toBeGreaterThanOrEqual(0.4);
    expect(share).toBeLessThanOrEqual(0.5);
  });

  test("6 1/2, 8 1/2, 12 1/2", () => {
    expect(slabSizes.map(shown)).toEqual([6.5, 8.5, 12.5]);
  });

  it("counts whole slabs, and finds the largest size that gives enough", () => {
    const usable = area(inch(13), inch(13));
    expect(slabsFrom(usable, cutTo(6.5))).toBe(4);
    expect(slabYield(usable)).toEqual({ size: cutTo(12.5), count: 1 });
    expect(slabYield(usable, 2)).toEqual({ size: cutTo(8.5), count: 2 });
    expect(slabYield(usable, 5)).toBeNull();
  });
});

it("every answer is a whole length", () => {
  const seams = fc.constantFrom(seam, inches(1, 2), millimetres(7.5), millimetres(6));
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 500_000 }), seams, (units, allowance) => {
      const size = finished(length(units));
      const { side, corner } = settingSquares(size, allowance);
      const { large, small } = geeseSquares(size, allowance);
      const { inner, outer } = economy(size, allowance);
      for (const one of [side, corner, large, small, inner, outer])
        expect(Number.isSafeInteger(one)).toBe(true);
    }),
  );
});
