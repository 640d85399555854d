import { readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  doubts,
  type MeasuredFile,
  type MeasuredPiece,
  photoKinds,
  photoWarnings,
  writePieces,
} from "./index.ts";

const schema = JSON.parse(
  readFileSync(new URL("../../docs/schema/verso-pieces.schema.json", import.meta.url), "utf8"),
);
const isDocument = new Ajv2020({ strict: true, strictTypes: false, allErrors: true }).compile(schema);

const number = (max: number) => fc.double({ min: 0, max, noNaN: true });
const coordinate = fc.double({ min: -50, max: 5000, noNaN: true });
const piece: fc.Arbitrary<MeasuredPiece> = fc.record({
  kind: fc.constantFrom(...photoKinds),
  width: number(40),
  height: number(40),
  measured: fc.record({ width: number(40), height: number(40) }),
  pixels: fc.array(fc.tuple(coordinate, coordinate), { minLength: 3, maxLength: 8 }),
  colours: fc.array(
    fc.record({
      lab: fc.record({ l: number(100), a: coordinate, b: coordinate }),
      share: fc.double({ min: 0.01, max: 1, noNaN: true }),
    }),
    { maxLength: 4 },
  ),
  busyness: number(60),
  check: fc.uniqueArray(fc.constantFrom(...doubts)),
});
const file: fc.Arbitrary<MeasuredFile> = fc.record({
  file: fc.string(),
  measured: fc.record({
    cards: fc.uniqueArray(fc.integer({ min: 0, max: 17 })),
    residual: fc.option(number(9)),
    warnings: fc.subarray([...photoWarnings]),
    pieces: fc.array(piece, { maxLength: 4 }),
  }),
});

describe("the schema of pieces from photos", () => {
  it("holds for whatever is written", () => {
    fc.assert(
      fc.property(fc.array(file, { maxLength: 3 }), (files) => {
        isDocument(JSON.parse(writePieces(files)));
        expect(isDocument.errors ?? []).toEqual([]);
      }),
    );
  });

  it("names the same words as the code", () => {
    const { photo, piece } = schema.$defs;
    expect(piece.properties.kind.enum).toEqual([...photoKinds]);
    expect(piece.properties.check.items.enum).toEqual([...doubts]);
    expect(photo.properties.warnings.items.enum).toEqual([...photoWarnings]);
  });

  it("does not hold for what lacks a part, or has one more", () => {
    const whole = JSON.parse(writePieces([]));
    expect(isDocument(whole)).toBe(true);
    expect(isDocument({ ...whole, unit: "cm" })).toBe(false);
    expect(isDocument({ ...whole, more: 1 })).toBe(false);
  });
});
