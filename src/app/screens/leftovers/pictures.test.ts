import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkDraft, type DraftPiece, kinds, type Piece } from "../../../engine/cloth/index.ts";
import { areaOf, inches, length } from "../../../engine/length/index.ts";
import {
  outlineOf,
  pictureOf,
  picturesOf,
  rulerFor,
  seamInside,
  shareAcross,
  widthAcross,
} from "./pictures.ts";

function checked(piece: Omit<DraftPiece, "row">): Piece {
  const side = inches(100);
  const draft = { unit: "in", back: { width: side, height: side }, plain: { name: "" } } as const;
  const check = checkDraft({ ...draft, pieces: [{ row: 1, ...piece }] });
  if (!check.ok || check.value.job.pieces[0] === undefined)
    throw new Error("a piece of these tests is no piece");
  return check.value.job.pieces[0];
}

describe("a row, drawn", () => {
  test("strips lie below one another", () => {
    const picture = pictureOf(checked({ kind: "strip", width: inches(5, 2), height: inches(31), count: 3 }));
    expect(picture.width).toBe(inches(31));
    expect(picture.shapes.map(({ x, y }) => [x, y])).toEqual([
      [0, 0],
      [0, inches(13, 4)],
      [0, inches(13, 2)],
    ]);
  });

  test("squares lie in rows", () => {
    const picture = pictureOf(checked({ width: inches(5), height: inches(5), count: 6 }));
    expect(new Set(picture.shapes.map(({ y }) => y)).size).toBe(2);
    expect(picture.more).toBe(0);
  });

  test("of very many some are drawn, and the rest is said", () => {
    const picture = pictureOf(checked({ width: inches(5), height: inches(5), count: 400 }));
    expect([picture.shapes.length, picture.more]).toEqual([24, 376]);
  });

  test("crumbs are a square of as much cloth", () => {
    const picture = pictureOf(checked({ kind: "crumbs", area: areaOf(inches(10) ** 2) }));
    expect([picture.width, picture.height, picture.shapes[0]?.kind]).toEqual([
      inches(10),
      inches(10),
      "loose",
    ]);
  });

  test("triangles have a slanted side, two sewn ones a seam", () => {
    const [triangle] = pictureOf(checked({ kind: "triangle", width: inches(5), height: inches(4) })).shapes;
    expect(triangle && outlineOf(triangle)).toBe(`M0 0V${inches(4)}H${inches(5)}Z`);
    expect(triangle && seamInside(triangle)).toBeNull();
    const [sewn] = pictureOf(
      checked({ kind: "half-square-triangle", width: inches(3), height: inches(3) }),
    ).shapes;
    expect(sewn && seamInside(sewn)).toBe(`M0 ${inches(3)}L${inches(3)} 0`);
  });
});

describe("one scale for all", () => {
  test("as wide as the widest row, never so little that crumbs look huge", () => {
    expect(widthAcross([])).toBe(inches(36));
    const strip = { id: "a", piece: checked({ width: inches(2), height: inches(90) }) };
    const { pictures, across } = picturesOf([strip]);
    expect(across).toBe(inches(90));
    const picture = pictures.get("a");
    expect(picture && shareAcross(picture, across)).toBe(1);
  });

  test("with a ruler that fits into it", () => {
    for (const across of [36, 61, 200]) {
      for (const unit of ["in", "cm"] as const) {
        expect(rulerFor(inches(across), unit)).toBeLessThan(inches(across));
      }
    }
  });

  const side = fc.integer({ min: 1, max: 400 }).map((eighths) => inches(eighths, 8));
  const piece = fc.record({
    kind: fc.constantFrom(...kinds.filter((kind) => kind !== "crumbs")),
    width: side,
    height: side,
    count: fc.integer({ min: 1, max: 60 }),
  });

  test("no piece lies upon another or beyond the picture", () => {
    fc.assert(
      fc.property(piece, (given) => {
        const { shapes, width, height } = pictureOf(checked(given));
        for (const [index, one] of shapes.entries()) {
          expect(length(one.x + one.width)).toBeLessThanOrEqual(width);
          expect(length(one.y + one.height)).toBeLessThanOrEqual(height);
          for (const other of shapes.slice(index + 1)) {
            const apart =
              one.x + one.width <= other.x ||
              other.x + other.width <= one.x ||
              one.y + one.height <= other.y ||
              other.y + other.height <= one.y;
            expect(apart).toBe(true);
          }
        }
      }),
      { numRuns: 60 },
    );
  });
});
