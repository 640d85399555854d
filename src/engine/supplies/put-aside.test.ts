import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { DraftPiece } from "../cloth/index.ts";
import { inches, type Length } from "../length/index.ts";
import { bindingFor, putAside, usualBinding } from "./index.ts";

const quilt = { width: inches(60), height: inches(80) };
const both = { binding: quilt, label: true };
const bindingOnly = { binding: quilt, label: false };

let row = 0;
const piece = (width: number, height: number, more: Partial<DraftPiece> = {}): DraftPiece => {
  row += 1;
  return { row, width: inches(width * 8, 8), height: inches(height * 8, 8), ...more };
};

// 60 × 80: 280 in round, 10 in more for corners and the last join (published allowances: 8 to 10 in).
const needed = inches(290);

describe("binding is put aside first", () => {
  test("of one fabric where one is enough, no more than it takes", () => {
    const teal = piece(2.5, 42, { kind: "strip", count: 10, fabric: "teal" });
    const aside = putAside([piece(2.5, 40, { kind: "strip", count: 3, fabric: "rust" }), teal], bindingOnly);
    // k strips of 42 in give 39½ k + 2½ in: seven give 279, eight 318½ (worked by hand).
    expect(aside.binding).toMatchObject({
      needed,
      short: null,
      from: [{ row: teal.row, count: 8, fabric: "teal" }],
    });
    expect(aside.pieces.find((one) => one.row === teal.row)?.count).toBe(2);
  });

  test("of a length, whose rest stays", () => {
    const oat = piece(42, 90, { kind: "length", fabric: "oat" });
    const aside = putAside([oat, piece(2.5, 20, { kind: "strip", fabric: "rust" })], bindingOnly);
    expect(aside.binding?.from).toEqual([
      { row: oat.row, count: 8, fabric: "oat", width: inches(42), height: inches(5, 2) },
    ]);
    // Eight strips of 2½ in are 20 in.
    expect(aside.pieces[0]).toMatchObject({ width: inches(42), height: inches(70) });
  });

  test("of strips of several fabrics, the least trimmed first", () => {
    const wide = piece(3, 42, { kind: "strip", count: 9, fabric: "a" });
    const exact = piece(2.5, 42, { kind: "strip", count: 5, fabric: "b" });
    const aside = putAside([{ ...wide, count: 4 }, exact], bindingOnly);
    expect(aside.binding?.from.map(({ row: from, count }) => [from, count])).toEqual([
      [exact.row, 5],
      [wide.row, 3],
    ]);
  });

  test("nothing is taken where the heap isn't enough, and what is missing is said", () => {
    const heap = [piece(2.5, 42, { kind: "strip", count: 2, fabric: "teal" })];
    const aside = putAside(heap, bindingOnly);
    // Two strips of 42 in, joined: 81½ in.
    expect(aside.binding).toMatchObject({ from: [], short: inches(417, 2) });
    expect(aside.pieces).toBe(heap);
  });

  test("what she keeps back, gives away or must have in stays where it is", () => {
    for (const use of ["keep-back", "give-away", "must"] as const) {
      const aside = putAside(
        [piece(2.5, 42, { kind: "strip", count: 20, fabric: "teal", use })],
        bindingOnly,
      );
      expect(aside.binding?.from).toEqual([]);
    }
  });

  test("narrow, short and far too wide strips aren't bound with", () => {
    const heap = [piece(2.25, 42, { kind: "strip", count: 20 }), piece(4, 42, { kind: "strip", count: 20 })];
    expect(
      putAside([...heap, piece(2.5, 9, { kind: "strip", count: 90 })], bindingOnly).binding?.from,
    ).toEqual([]);
  });
});

describe("a label", () => {
  test("takes the smallest light piece it fits on", () => {
    const light = piece(6, 8, { fabric: "cream", colour: "ivory" });
    const heap = [
      piece(5, 7, { fabric: "ink", colour: "#223" }),
      piece(5, 7, { fabric: "grey" }),
      light,
      piece(9, 9, { fabric: "cream", colour: "ivory" }),
      piece(4, 12, { colour: "white" }),
      piece(8, 8, { kind: "block", colour: "white" }),
    ];
    const aside = putAside(heap, { binding: null, label: true });
    expect(aside.label?.from).toMatchObject([{ row: light.row, count: 1 }]);
    expect(aside.pieces).toHaveLength(5);
  });

  test("does without one where none fits", () => {
    expect(putAside([piece(4, 4)], { binding: null, label: true }).label).toEqual({ from: [], short: null });
  });
});

describe("laws", () => {
  const side = fc.integer({ min: 4, max: 720 }).map((eighths) => inches(eighths, 8));
  const heaps = fc
    .array(
      fc.record({
        kind: fc.constantFrom("strip", "length", "rectangle", undefined),
        width: fc.oneof(side, fc.constant(inches(5, 2))),
        height: fc.oneof(side, fc.constant(inches(42))),
        count: fc.integer({ min: 1, max: 12 }),
        fabric: fc.constantFrom("teal", "oat", ""),
      }),
      { maxLength: 12 },
    )
    .map((rows) =>
      rows.map(
        ({ kind, ...rest }, index): DraftPiece => ({ row: index + 1, ...rest, ...(kind ? { kind } : {}) }),
      ),
    );
  const areaOf = (pieces: readonly { width?: Length; height?: Length; count?: number }[]) =>
    pieces.reduce((sum, { width = 0, height = 0, count = 1 }) => sum + width * height * count, 0);

  test("what is put aside and what is left are the heap, to the last bit", () => {
    fc.assert(
      fc.property(heaps, (heap) => {
        const { pieces, binding, label } = putAside(heap, both);
        expect(areaOf(pieces) + areaOf(binding?.from ?? []) + areaOf(label?.from ?? [])).toBe(areaOf(heap));
        for (const { count = 1 } of pieces) expect(count).toBeGreaterThan(0);
      }),
    );
  });

  test("what is put aside is long enough to go round, joined on the diagonal", () => {
    fc.assert(
      fc.property(heaps, (heap) => {
        const { binding } = putAside(heap, both);
        if (binding === null || binding.from.length === 0) return;
        const strips = binding.from.flatMap(({ width, height, count }) => {
          return Array.from({ length: count }, () => Math.max(width, height));
        });
        const joined =
          strips.reduce((sum, one) => sum + one, 0) - (strips.length - 1) * usualBinding.stripWidth;
        expect(joined).toBeGreaterThanOrEqual(bindingFor(quilt).length);
        expect(binding.short).toBeNull();
      }),
    );
  });
});
