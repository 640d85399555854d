import { describe, expect, it } from "vitest";
import { rectangle, type Spot, triangle } from "../../test/made/scene.ts";
import { cutOut } from "./cutOut.ts";
import { writeOverlay } from "./overlay.ts";
import type { MeasuredPiece, Photo } from "./types.ts";

/** Red to the right, green downwards: a pixel says where it was. */
const photo: Photo = {
  width: 200,
  height: 200,
  rgba: Uint8Array.from({ length: 4 * 200 * 200 }, (_, at) => {
    const [x, y] = [Math.floor(at / 4) % 200, Math.floor(at / 800)];
    return [x, y, 0, 255][at % 4] ?? 0;
  }),
};
const pixelAt = ({ width, rgba }: Photo, x: number, y: number) => [
  ...rgba.slice(4 * (y * width + x), 4 * (y * width + x) + 4),
];

describe("a cut-out", () => {
  it("of a slanted rectangle stands upright and shows what lay at its corners", () => {
    const pixels = rectangle([100, 100], [40, 80], 30);
    const made = cutOut(photo, { kind: "rectangle", measured: { width: 4, height: 8 }, pixels }, 80);
    expect([made.width, made.height]).toEqual([40, 80]);
    for (const [x, y, corner] of [
      [0, 0, 0],
      [39, 0, 1],
      [39, 79, 2],
      [0, 79, 3],
    ] as const) {
      const [red = 0, green = 0, , clear] = pixelAt(made, x, y);
      expect(Math.abs(red - (pixels[corner]?.[0] ?? 0))).toBeLessThan(1.5);
      expect(Math.abs(green - (pixels[corner]?.[1] ?? 0))).toBeLessThan(1.5);
      expect(clear).toBe(255);
    }
  });

  it("of a rectangle that lies across is turned, not squeezed", () => {
    const pixels = rectangle([100, 100], [80, 40], 0);
    const made = cutOut(photo, { kind: "strip", measured: { width: 4, height: 8 }, pixels }, 40);
    expect([made.width, made.height]).toEqual([20, 40]);
  });

  it("of a triangle has its right angle at the lower left, and nothing beyond its long side", () => {
    const pixels: Spot[] = triangle([60, 60], [30, 60], 15);
    const made = cutOut(photo, { kind: "triangle", measured: { width: 3, height: 6 }, pixels }, 60);
    const [red = 0, green = 0, , clear] = pixelAt(made, 1, made.height - 2);
    expect(clear).toBe(255);
    expect(Math.hypot(red - 60, green - 60)).toBeLessThan(5);
    expect(pixelAt(made, made.width - 2, 1)).toEqual([0, 0, 0, 0]);
    const filled = made.rgba.filter((value, at) => at % 4 === 3 && value === 255).length;
    expect(filled / (made.width * made.height)).toBeCloseTo(0.5, 1);
  });

  it("of an odd shape is clear where its frame holds no cloth", () => {
    const pixels: Spot[] = [
      [50, 50],
      [90, 60],
      [80, 100],
      [50, 90],
    ];
    const made = cutOut(photo, { kind: "odd", measured: { width: 1, height: 1 }, pixels }, 50);
    expect(pixelAt(made, 38, 1)).toEqual([0, 0, 0, 0]);
    expect(pixelAt(made, 20, 25)[3]).toBe(255);
  });
});

describe("the photo with outlines", () => {
  const piece: MeasuredPiece = {
    kind: "square",
    width: 4,
    height: 4,
    measured: { width: 4.1, height: 4.1 },
    pixels: [
      [9.5, 9.5],
      [49.5, 9.5],
      [49.5, 49.5],
      [9.5, 49.5],
    ],
    colours: [],
    busyness: 0,
    check: [],
  };

  it("draws each where it lies, dashed where it must be looked at, and holds no sign that ends its text", () => {
    const svg = writeOverlay({
      photo: { width: 100, height: 80 },
      pieces: [piece, { ...piece, check: ["near-floor"] }],
      picture: "data:image/jpeg;base64,AA==",
      label: (_, number) => `${number} <b>`,
    });
    expect(svg.match(/points="10,10 50,10 50,50 10,50"/g)).toHaveLength(4);
    expect(svg.match(/stroke-dasharray/g)).toHaveLength(1);
    expect(svg).toContain(">1 &#60;b&#62;</text>");
    expect(svg).toContain('viewBox="0 0 100 80"');
  });
});
