import fc from "fast-check";
import { expect, it } from "vitest";
import type { LyingCloth } from "../../../engine/drawing/index.ts";
import { inches, length } from "../../../engine/length/index.ts";
import { tilesOf } from "./tiles.ts";

const picture = { address: "", width: 100, height: 320, isPartClear: false };

function lying(kind: LyingCloth["kind"], width: number, height: number): LyingCloth {
  const size = { width: inches(width), height: inches(height) };
  return { piece: "one", kind, outline: [], size, turn: [1, 0, 0, 1, 0, 0] };
}

it("a picture of the whole piece is laid once, from edge to edge", () => {
  const tiles = tilesOf(lying("strip", 3, 10), picture);
  expect(tiles).toEqual({ isTurned: false, boxes: [{ y: 0, width: inches(3), height: inches(10) }] });
});

it("a piece that was typed lying down has its picture lie down", () => {
  expect(tilesOf(lying("strip", 10, 3), picture)).toEqual({
    isTurned: true,
    boxes: [{ y: 0, width: inches(3), height: inches(10) }],
  });
});

it("of a strip that lay folded it is laid twice, true to its width", () => {
  const boxes = tilesOf(lying("strip", 5, 32), picture)?.boxes ?? [];
  expect(boxes.map(({ y, height }) => [y, height])).toEqual([
    [0, inches(16)],
    [inches(16), inches(16)],
  ]);
});

it("a shape of which the picture shows no whole is left in its color", () => {
  const clear = { ...picture, isPartClear: true };
  expect(tilesOf(lying("odd", 3, 10), clear)).toBeNull();
  expect(tilesOf(lying("rectangle", 3, 10), clear)).toBeNull();
  expect(tilesOf(lying("triangle", 3, 3), clear)?.boxes).toHaveLength(1);
});

it("whatever she typed, all of the piece is covered, and never by more than a dozen", () => {
  const sides = fc.integer({ min: 1, max: 40 });
  fc.assert(
    fc.property(sides, sides, (width, height) => {
      const cloth = lying("rectangle", width, height);
      const tiles = tilesOf(cloth, picture);
      const last = tiles?.boxes.at(-1);
      const whole = tiles?.isTurned ? cloth.size.width : cloth.size.height;
      expect(tiles?.boxes.length).toBeLessThanOrEqual(12);
      expect(length(Math.ceil((last?.y ?? 0) + (last?.height ?? 0)))).toBeGreaterThanOrEqual(whole);
    }),
  );
});
