import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { pixelOf, plain, type Scene } from "../../test/made/scene.ts";
import { targets } from "../engine/cards/index.ts";
import { inches, toNumber } from "../engine/length/index.ts";
import { calibrated } from "./calibrate.ts";
import { viewsOf } from "./camera.ts";
import { onFloor } from "./cameraFit.ts";
import { homography } from "./homography.ts";
import { courseThrough } from "./lines.ts";
import { hullOf, rectangleInside, signedArea, withFewerSides } from "./polygon.ts";
import { shapeOf } from "./shape.ts";
import { leastSquares } from "./solve.ts";
import type { Place, SeenMarker } from "./types.ts";

/** A phone over an empty floor. */
const empty: Omit<Scene, "tilt" | "k1" | "cards"> = {
  width: 4000,
  height: 3000,
  focal: 3050,
  towards: 60,
  far: 34,
  looksAt: [0, 0],
  floor: plain(0.5, 0.5, 0.5),
  pieces: [],
  fall: 0,
  cast: [1, 1, 1],
  noise: 0,
  seed: 1,
};

/** Where the renderer puts the corners of all markers that lie in a scene. */
function seenIn(scene: Scene): readonly SeenMarker[] {
  return scene.cards.flatMap(({ first, at, degrees }) => {
    const turned = (degrees * Math.PI) / 180;
    const markers = targets.find(({ markers }) => markers[0]?.id === first)?.markers ?? [];
    return markers.map(({ id, corners }): SeenMarker => {
      const onPage = corners.map(({ x, y }): Place => [toNumber(x, "in"), toNumber(y, "in")]);
      return { id, corners: onPage.map((place) => pixelOf(scene, onFloor(place, at, turned))) };
    });
  });
}

const small = (most: number) => fc.double({ min: -most, max: most, noNaN: true });

describe("a camera", () => {
  it("finds on the floor what it shows in the photo", () => {
    fc.assert(
      fc.property(small(0.6), small(0.6), small(3), small(0.08), small(12), (x, y, z, k1, side) => {
        const camera = {
          focal: 3000,
          k1,
          turn: [x, y, z] as const,
          shift: [1, -2, 40] as const,
          middle: [2000, 1500] as const,
        };
        const { toPhoto, toFloor } = viewsOf(camera);
        const place: Place = [side, side / 3 - 1];
        const back = toFloor(toPhoto(place));
        expect(Math.hypot((back?.[0] ?? 99) - place[0], (back?.[1] ?? 99) - place[1])).toBeLessThan(1e-5);
      }),
      { numRuns: 60 },
    );
  });

  it.each([
    ["straight down", 0, 0.02],
    ["askew", 20, 0.05],
    ["far askew", 35, -0.03],
  ])("is solved from four cards, %s: as the renderer made it", (_, tilt, k1) => {
    const cards = [
      { first: 0, at: [-14, -9.5] as const, degrees: 5 },
      { first: 1, at: [14, -9.5] as const, degrees: 95 },
      { first: 2, at: [14, 9.5] as const, degrees: -12 },
      { first: 3, at: [-14, 9.5] as const, degrees: 181 },
    ];
    const scene: Scene = { ...empty, tilt, k1, cards };
    const found = calibrated(seenIn(scene), { width: 4000, height: 3000, printed: 1 });
    expect(found?.residual).toBeLessThan(0.05);
    const [one, other] = [found?.lying[0]?.at ?? [0, 0], found?.lying[2]?.at ?? [0, 0]];
    expect(Math.hypot(other[0] - one[0], other[1] - one[1])).toBeCloseTo(Math.hypot(28, 19), 1);
  });
});

describe("a lens that bends much", () => {
  it.each([-0.3, -0.2, 0.15])("is believed, by %d, from a single sheet", (k1) => {
    const scene: Scene = { ...empty, far: 40, tilt: 4, k1, cards: [{ first: 10, at: [0, -6], degrees: 4 }] };
    const found = calibrated(seenIn(scene), { width: 4000, height: 3000, printed: 1 });
    expect(Math.abs((found?.camera.k1 ?? 0) - k1)).toBeLessThan(0.004);
  });
});

describe("what is solved on the way", () => {
  it("a homography brings its pairs onto one another", () => {
    const pairs: (readonly [Place, Place])[] = [
      [
        [0, 0],
        [10, 10],
      ],
      [
        [1, 0],
        [30, 12],
      ],
      [
        [1, 1],
        [28, 40],
      ],
      [
        [0, 1],
        [8, 30],
      ],
    ];
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = homography(pairs) ?? [];
    for (const [[x, y], [u, v]] of pairs) {
      expect((a * x + b * y + c) / (g * x + h * y + 1)).toBeCloseTo(u, 6);
      expect((d * x + e * y + f) / (g * x + h * y + 1)).toBeCloseTo(v, 6);
    }
    expect(homography(pairs.slice(1))).toBeNull();
  });

  it("least squares: a line through points by hand", () => {
    const line = leastSquares(
      [
        [1, 0],
        [1, 1],
        [1, 2],
      ],
      [1, 2, 4],
    );
    expect(line?.map((value) => Number(value.toFixed(6)))).toEqual([0.833333, 1.5]);
    expect(leastSquares([[1, 1]], [2])).toBeNull();
  });

  it("a course goes through what most points say, whatever a fifth of them says", () => {
    const points = Array.from({ length: 30 }, (_, s): Place => [s, s % 5 === 2 ? 5 : 0.1 * s + 1]);
    const course = courseThrough(points, 0.01);
    expect(course?.offset).toBeCloseTo(1, 6);
    expect(course?.slope).toBeCloseTo(0.1, 6);
  });
});

describe("shapes on the floor", () => {
  const box = (width: number, height: number): Place[] => [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ];

  it("a hull with fewer sides goes round the hull", () => {
    const circle = Array.from(
      { length: 24 },
      (_, at): Place => [Math.cos((at * Math.PI) / 12), Math.sin((at * Math.PI) / 12)],
    );
    const hull = hullOf([...circle, [0, 0], [0.1, 0.2]]);
    expect(hull).toHaveLength(24);
    const four = withFewerSides(hull, 4) ?? [];
    expect(four).toHaveLength(4);
    expect(signedArea(four)).toBeGreaterThan(signedArea(hull));
  });

  it.each([
    [box(4.5, 4.5), "square", 4.375, 4.375],
    [box(2.54, 11), "strip", 2.5, 10.875],
    [box(6.04, 4), "rectangle", 3.875, 6],
    [
      [
        [0, 0],
        [4, 0],
        [0, 3.04],
      ],
      "triangle",
      3,
      3.875,
    ],
    // The largest straight rectangle of a trapezoid of 4 and 8 over 4 high stands under its short side, by hand.
    [
      [
        [2, 0],
        [6, 0],
        [8, 4],
        [0, 4],
      ],
      "odd",
      3.875,
      3.875,
    ],
  ] as const)("%j is a %s, and no more is promised than there is", (polygon, kind, width, height) => {
    expect(shapeOf(polygon, { pixel: 0.01, step: inches(1, 8) })).toMatchObject({ kind, width, height });
  });

  it("a coarse photo promises less", () => {
    expect(shapeOf(box(4.54, 4.54), { pixel: 0.01, step: inches(1, 8) })).toMatchObject({ width: 4.5 });
    expect(shapeOf(box(4.54, 4.54), { pixel: 0.05, step: inches(1, 8) })).toMatchObject({ width: 4.375 });
  });

  it("a rectangle's largest rectangle is itself", () => {
    expect(rectangleInside(box(3, 5))).toEqual({ width: expect.closeTo(3, 9), height: expect.closeTo(5, 9) });
  });
});
