import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { tableTop } from "../../test/made/photoFile.ts";
import { render } from "../../test/made/render.ts";
import { pixelOf, rectangle, type Spot } from "../../test/made/scene.ts";
import { vision } from "../../test/made/vision.ts";
import { corrected, splitAlong } from "./corrections.ts";
import { type OpenPhoto, openPhoto } from "./measure.ts";
import { signedArea } from "./polygon.ts";

let opened: OpenPhoto;
beforeAll(() => {
  const photo = openPhoto(render(tableTop), vision, { printed: 1 });
  if (!("measured" in photo)) throw new Error("the cards are there to be found");
  opened = photo;
}, 120_000);

const outlineAt = (which: number) =>
  (tableTop.pieces[which]?.outline ?? []).map((spot) => pixelOf(tableTop, spot));
const middleOf = (places: readonly Spot[]): Spot => [
  places.reduce((sum, [x]) => sum + x, 0) / places.length,
  places.reduce((sum, [, y]) => sum + y, 0) / places.length,
];
const made = (correction: Parameters<typeof corrected>[2]) => corrected(opened, vision, correction);

// The blue square, cut 4.55 in.
const square = 0;
const cream = 4;

describe("a correction on the photo", () => {
  it("goes to the cloth's own edges where corners were tapped near them, either way round", () => {
    const about = outlineAt(square).map(([x, y], at): Spot => [x + (at % 2 ? 4 : -3), y + (at < 2 ? -4 : 3)]);
    for (const pixels of [about, about.toReversed()]) {
      const [piece] = made({ kind: "corners", pixels, snaps: "all" });
      expect(piece).toMatchObject({ kind: "square", width: 4.5, height: 4.5, check: [] });
    }
  });

  it("stays where she put a corner when it is not to snap", () => {
    const [first, ...others] = outlineAt(square);
    const off: Spot = [(first?.[0] ?? 0) - 30, (first?.[1] ?? 0) - 30];
    const [piece] = made({ kind: "corners", pixels: [off, ...others], snaps: "none" });
    expect(piece?.kind).toBe("odd");
    const corners = (piece?.pixels ?? []).map(([x, y]) => Math.hypot(x - off[0], y - off[1]));
    expect(Math.min(...corners)).toBeLessThan(0.1);
  });

  it("finds a piece by a place inside of it, and nothing on the bare floor", () => {
    for (const which of [square, 1, 2, cream]) {
      const [piece, ...others] = made({ kind: "inside", at: middleOf(outlineAt(which)) });
      expect(others).toEqual([]);
      const seen = opened.measured.pieces.find(({ width }) => width === piece?.width);
      expect(seen, `piece ${which}`).toMatchObject({ kind: piece?.kind, height: piece?.height });
    }
    expect(made({ kind: "inside", at: pixelOf(tableTop, [-9, 0.5]) })).toEqual([]);
  });

  it("splits one in two that are as large together, and joins them again", () => {
    const pixels = outlineAt(square);
    const half = (one: number, other: number) => middleOf([pixels[one] ?? [0, 0], pixels[other] ?? [0, 0]]);
    const parts = made({ kind: "split", pixels, from: half(0, 1), to: half(2, 3) });
    expect(parts.map(({ kind }) => kind)).toEqual(["rectangle", "rectangle"]);
    for (const { measured } of parts) {
      expect(measured.width).toBeCloseTo(4.55 / 2, 1);
      expect(measured.height).toBeCloseTo(4.55, 1);
    }
    const [whole] = made({ kind: "merge", pixels: parts.map((part) => part.pixels) });
    expect(whole).toMatchObject({ kind: "square", width: 4.5 });
  });
});

describe("a polygon split along a line", () => {
  const sides = fc.tuple(fc.integer({ min: 0, max: 3 }), fc.integer({ min: 0, max: 3 }));
  const share = fc.double({ min: 0.05, max: 0.95, noNaN: true });

  it("comes apart in two that are as large together, or not at all", () => {
    fc.assert(
      fc.property(sides, share, share, fc.double({ min: 0, max: 360, noNaN: true }), ([a, b], s, t, turn) => {
        const polygon = rectangle([0, 0], [5, 8], turn);
        const on = (side: number, along: number): Spot => {
          const [from, to] = [polygon[side] ?? [0, 0], polygon[(side + 1) % 4] ?? [0, 0]];
          return [from[0] + along * (to[0] - from[0]), from[1] + along * (to[1] - from[1])];
        };
        const parts = splitAlong(polygon, [on(a, s), on(b, t)]);
        if (a === b) expect(parts).toEqual([]);
        for (const part of parts) expect(signedArea(part)).toBeGreaterThan(0);
        if (parts.length > 0)
          expect(parts.reduce((sum, part) => sum + signedArea(part), 0)).toBeCloseTo(40, 6);
        else if (a !== b) expect(Math.min(s, t, 1 - s, 1 - t)).toBeLessThan(0.2);
      }),
    );
  });
});
