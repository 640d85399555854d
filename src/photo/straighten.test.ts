import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { homography, onto } from "./homography.ts";
import { areInOrder, type Corners, paletteOf, straightened } from "./straighten.ts";
import type { Photo, Place } from "./types.ts";

type Rgb = readonly [number, number, number];
const patches: readonly Rgb[] = [
  [200, 40, 40],
  [40, 160, 60],
  [40, 60, 190],
  [230, 220, 190],
  [30, 30, 40],
  [220, 170, 40],
];
const columns = 3;

/** A top of 3 × 2 patches, each a unit square, as seen through `map` from the photo's pixels. */
function photoOf(width: number, height: number, inside: (place: Place) => Place): Photo {
  const rgba = new Uint8ClampedArray(4 * width * height).fill(128);
  for (let at = 0; at < width * height; at += 1) {
    const [u, v] = inside([at % width, Math.floor(at / width)]);
    const patch = patches[Math.floor(v) * columns + Math.floor(u)];
    if (u >= 0 && u < columns && v >= 0 && v < 2 && patch) rgba.set([...patch, 255], 4 * at);
  }
  return { width, height, rgba };
}

const corner = (x: number, y: number) =>
  fc.tuple(
    fc.double({ min: x - 25, max: x + 25, noNaN: true }),
    fc.double({ min: y - 20, max: y + 20, noNaN: true }),
  );
const seen = fc.tuple(corner(50, 40), corner(250, 40), corner(250, 180), corner(50, 180));

describe("a photo of the top", () => {
  it("is straightened, wherever its corners are seen: each patch lies where it is sewn", () => {
    const law = (corners: Corners) => {
      const tops: Corners = [
        [0, 0],
        [columns, 0],
        [columns, 2],
        [0, 2],
      ];
      const inside = homography(corners.map((place, at) => [place, tops[at] ?? place] as const));
      if (inside === null) throw new Error("four corners that are far apart have a map");
      const photo = photoOf(300, 220, (place) => onto(inside, place));
      const top = straightened(photo, corners, { width: 90, height: 60 });
      for (const [at, patch] of patches.entries()) {
        const [x, y] = [15 + 30 * (at % columns), 15 + 30 * Math.floor(at / columns)];
        const pixel = [...(top?.rgba.subarray(4 * (y * 90 + x), 4 * (y * 90 + x) + 3) ?? [])];
        const off = pixel.map((byte, channel) => Math.abs(byte - (patch[channel] ?? 0)));
        expect(Math.max(...off)).toBeLessThanOrEqual(1);
      }
    };
    fc.assert(fc.property(seen, law), { numRuns: 40 });
  });

  it("that fills its photo is the photo itself", () => {
    const photo = photoOf(60, 40, ([x, y]) => [(x + 0.5) / 20, (y + 0.5) / 20]);
    const whole: Corners = [
      [-0.5, -0.5],
      [59.5, -0.5],
      [59.5, 39.5],
      [-0.5, 39.5],
    ];
    const top = straightened(photo, whole, photo);
    const off = [...photo.rgba].map((byte, at) => Math.abs(byte - (top?.rgba[at] ?? 0)));
    expect(Math.max(...off)).toBeLessThanOrEqual(1);
  });

  it("whose corners cross, are bent inwards or lie in a line is told so", () => {
    const [a, b, c, d]: Corners = [
      [0, 0],
      [10, 0],
      [10, 8],
      [0, 8],
    ];
    expect(areInOrder([a, b, c, d])).toBe(true);
    for (const wrong of [
      [b, a, c, d],
      [a, c, b, d],
      [a, b, [3, 2], d],
      [a, b, [5, 4], d],
      [a, a, c, d],
    ] as const) {
      expect(areInOrder(wrong)).toBe(false);
      expect(
        straightened(
          photoOf(12, 10, (at) => at),
          wrong,
          { width: 4, height: 4 },
        ),
      ).toBeNull();
    }
  });

  it("has few colors, those that take most of it first", () => {
    const photo = photoOf(90, 60, ([x, y]) => [x < 60 ? 0.5 : x < 80 ? 1.5 : 2.5, Math.min(0.9, y)]);
    const palette = paletteOf(photo);
    expect(palette).toHaveLength(3);
    expect(palette.map(({ share }) => Math.round(100 * share) / 100)).toEqual([
      expect.closeTo(0.67, 1),
      expect.closeTo(0.22, 1),
      expect.closeTo(0.11, 1),
    ]);
    expect(palette[0]?.lab.a).toBeGreaterThan(40);
    expect(palette.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
  });
});
