import type { Mat } from "@techstark/opencv-js";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { evenly, normals } from "../../test/made/chance.ts";
import { vision } from "../../test/made/vision.ts";
import { type Camera, rotationOf, viewsOf } from "./camera.ts";
import { cameraOver, onFloor, type SeenPaper } from "./cameraFit.ts";
import { homography, onto, turnAndShift } from "./homography.ts";
import type { Place } from "./types.ts";

// The vision library's own functions solve the same on random cases. Its functions want their places as rows.

/** Numbers as a matrix of so many columns in the library's memory, for as long as `work` runs. */
function inLibrary<T>(tables: readonly (readonly (readonly number[])[])[], work: (...all: Mat[]) => T): T {
  const all = tables.map((rows) =>
    vision.matFromArray(rows.length, rows[0]?.length ?? 0, vision.CV_64F, rows.flat()),
  );
  try {
    return work(...all);
  } finally {
    for (const one of all) one.delete();
  }
}

function numbersOf(matrix: Mat): readonly number[] {
  return [...matrix.data64F];
}

function libraryMap(pairs: SeenPaper): readonly number[] {
  return inLibrary([pairs.map(([from]) => from), pairs.map(([, to]) => to)], (from, to) => {
    const map = vision.findHomography(from, to);
    const numbers = numbersOf(map);
    map.delete();
    return numbers;
  });
}

function matrixOf({ focal, middle }: Camera) {
  return [
    [focal, 0, middle[0]],
    [0, focal, middle[1]],
    [0, 0, 1],
  ] as const;
}

function bendOf({ k1 }: Camera) {
  return [[k1, 0, 0, 0]] as const;
}

/** How the library has a camera of this lens stand, from where places on the floor lie in the photo. */
function libraryPose(pairs: SeenPaper, camera: Camera): Pick<Camera, "turn" | "shift"> {
  const tables = [
    pairs.map(([[x, y]]) => [x, y, 0]),
    pairs.map(([, to]) => to),
    matrixOf(camera),
    bendOf(camera),
  ];
  return inLibrary([...tables, [[0, 0, 0]], [[0, 0, 0]]], (floor, photo, lens, bend, turn, shift) => {
    vision.solvePnP(floor, photo, lens, bend, turn, shift);
    return { turn: triple(numbersOf(turn)), shift: triple(numbersOf(shift)) };
  });
}

function triple([x = 0, y = 0, z = 0]: readonly number[]) {
  return [x, y, z] as const;
}

function near(one: readonly number[], other: readonly number[]): number {
  return Math.max(...one.map((value, at) => Math.abs(value - (other[at] ?? Number.NaN))));
}

const within = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true });

/** Over a floor, looking at it from some side; never along it. */
const cameras: fc.Arbitrary<Camera> = fc
  .record({
    focal: within(2500, 4000),
    k1: within(-0.1, 0.1),
    tilt: within(-0.6, 0.6),
    lean: within(-0.6, 0.6),
    round: within(-3, 3),
    shift: fc.tuple(within(-3, 3), within(-3, 3), within(30, 60)),
  })
  .map(({ focal, k1, tilt, lean, round, shift }) => ({
    focal,
    k1,
    turn: turnedBy(tilt, lean, round),
    shift,
    middle: [1999.5, 1499.5] as const,
  }));

/** First round itself, then tilted: the library makes one turn of both. */
function turnedBy(tilt: number, lean: number, round: number): Camera["turn"] {
  const [cosine, sine] = [Math.cos(round), Math.sin(round)];
  const rows = rotationOf([tilt, lean, 0]).map(([a, b, c]) => [
    cosine * a + sine * b,
    cosine * b - sine * a,
    c,
  ]);
  return inLibrary([rows, [[0, 0, 0]]], (matrix, turn) => {
    vision.Rodrigues(matrix, turn);
    return triple(numbersOf(turn));
  });
}

const seeds = fc.nat(1e6);

function somePlaces(count: number, seed: number): readonly Place[] {
  const even = evenly(seed);
  return Array.from({ length: count }, (): Place => [30 * even() - 15, 20 * even() - 10]);
}

/** Corners of four squares of three inches, the first about the floor's own middle. */
const lyings = [
  { at: [0, 0], turned: 0 },
  { at: [24, 2], turned: 1.7 },
  { at: [22, 16], turned: -0.4 },
  { at: [-2, 17], turned: 3 },
] as const;
const square: readonly Place[] = [
  [-1.5, -1.5],
  [1.5, -1.5],
  [1.5, 1.5],
  [-1.5, 1.5],
];

describe("as the vision library does it, on random cases", () => {
  it("a rotation", () => {
    const turns = fc.tuple(within(-2, 2), within(-2, 2), within(-2, 2));
    const law = fc.property(turns, (turn) => {
      const theirs = inLibrary(
        [
          [turn],
          [
            [1, 0, 0],
            [0, 1, 0],
            [0, 0, 1],
          ],
        ],
        (from, to) => {
          vision.Rodrigues(from, to);
          return numbersOf(to);
        },
      );
      expect(near(rotationOf(turn).flat(), theirs)).toBeLessThan(1e-12);
    });
    fc.assert(law, { numRuns: 100 });
  });

  it("where a camera that bends shows a place", () => {
    const law = fc.property(cameras, seeds, (camera, seed) => {
      const places = somePlaces(12, seed);
      const tables = [
        places.map(([x, y]) => [x, y, 0]),
        [camera.turn],
        [camera.shift],
        matrixOf(camera),
        bendOf(camera),
      ];
      const theirs = inLibrary([...tables, [[0, 0]]], (floor, turn, shift, lens, bend, photo) => {
        vision.projectPoints(floor, turn, shift, lens, bend, photo);
        return numbersOf(photo);
      });
      expect(near(places.flatMap(viewsOf(camera).toPhoto), theirs)).toBeLessThan(1e-6);
    });
    fc.assert(law, { numRuns: 100 });
  });

  // It reckons in single precision, which at some thousands of pixels is true to a few ten-thousandths.
  it("a map of the floor from places that are exact", () => {
    const law = fc.property(cameras, seeds, fc.integer({ min: 4, max: 20 }), (camera, seed, count) => {
      const { toPhoto } = viewsOf({ ...camera, k1: 0 });
      const pairs = [...somePlaces(count, seed), [-14, -9], [14, -9], [14, 9], [-14, 9]].map(
        ([x = 0, y = 0]): SeenPaper[number] => [[x, y], toPhoto([x, y])],
      );
      const [ours, theirs] = [homography(pairs) ?? [], libraryMap(pairs)];
      for (const [place] of pairs) expect(near(onto(ours, place), onto(theirs, place))).toBeLessThan(1e-3);
    });
    fc.assert(law, { numRuns: 60 });
  });

  it("a map of the floor from places that are a little off: it fits as well within a fiftieth", () => {
    const law = fc.property(cameras, seeds, (camera, seed) => {
      const [{ toPhoto }, normal] = [viewsOf({ ...camera, k1: 0 }), normals(seed)];
      const pairs = somePlaces(24, seed).map((place): SeenPaper[number] => {
        const [x, y] = toPhoto(place);
        return [place, [x + 0.3 * normal(), y + 0.3 * normal()]];
      });
      const offOf = (map: readonly number[]) =>
        Math.hypot(...pairs.flatMap(([place, [x, y]]) => [onto(map, place)[0] - x, onto(map, place)[1] - y]));
      expect(offOf(homography(pairs) ?? [])).toBeLessThan(1.02 * offOf(libraryMap(pairs)));
    });
    fc.assert(law, { numRuns: 60 });
  });

  it("how a camera stands over a square that it sees exactly", () => {
    const law = fc.property(cameras, (bent) => {
      const camera = { ...bent, k1: 0 };
      const { toPhoto } = viewsOf(camera);
      const pairs = square.map((place): SeenPaper[number] => [place, toPhoto(place)]);
      const ours = turnAndShift(homography(pairs) ?? [], camera.focal, camera.middle);
      const theirs = libraryPose(pairs, camera);
      expect(near(rotationOf(ours?.turn ?? [9, 9, 9]).flat(), rotationOf(theirs.turn).flat())).toBeLessThan(
        1e-4,
      );
      expect(near(ours?.shift ?? [], theirs.shift)).toBeLessThan(1e-3);
    });
    fc.assert(law, { numRuns: 60 });
  });

  it("how a camera stands that four cards gave, their corners a little off: the library would not move it", () => {
    const law = fc.property(cameras, seeds, (camera, seed) => {
      const [{ toPhoto }, normal] = [viewsOf(camera), normals(seed)];
      const papers = lyings.map(
        ({ at, turned }): SeenPaper =>
          square.map((place) => {
            const [x, y] = toPhoto(onFloor(place, at, turned));
            return [place, [x + 0.15 * normal(), y + 0.15 * normal()]];
          }),
      );
      const fit = cameraOver(papers, { width: 4000, height: 3000, isWide: false });
      const onto = papers.flatMap((paper, which) => {
        const { at, turned } = fit?.poses[which] ?? { at: [9, 9] as const, turned: 9 };
        return paper.map(([place, pixel]) => [onFloor(place, at, turned), pixel] as const);
      });
      const theirs = libraryPose(onto, fit?.camera ?? camera);
      expect(
        near(rotationOf(fit?.camera.turn ?? [9, 9, 9]).flat(), rotationOf(theirs.turn).flat()),
      ).toBeLessThan(1e-4);
      expect(near(fit?.camera.shift ?? [], theirs.shift)).toBeLessThan(0.005);
    });
    fc.assert(law, { numRuns: 12 });
  });
});
