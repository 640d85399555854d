import { beforeAll, describe, expect, it } from "vitest";
import { render } from "../../test/made/render.ts";
import {
  dots,
  isInside,
  mat,
  type Paint,
  pixelOf,
  plain,
  rectangle,
  type Scene,
  type Spot,
  stripes,
  triangle,
  wood,
} from "../../test/made/scene.ts";
import { vision } from "../../test/made/vision.ts";
import { colourDifference } from "../engine/cloth/index.ts";
import { readLeftovers } from "../files/index.ts";
import {
  type MeasuredPhoto,
  type MeasuredPiece,
  measurePhoto,
  writePieces,
  writePiecesTable,
} from "./index.ts";

/** A table top with four cards, seen by a phone that is held a little askew. */
const table: Scene = {
  width: 720,
  height: 540,
  focal: 565,
  k1: 0.04,
  tilt: 15,
  towards: 70,
  far: 24,
  looksAt: [0, 0],
  floor: wood([0.25, 0.16, 0.09]),
  cards: [
    { first: 0, at: [-9.5, -6.5], degrees: 5 },
    { first: 1, at: [9.5, -6.5], degrees: 95 },
    { first: 2, at: [9.5, 6.5], degrees: -12 },
    { first: 3, at: [-9.5, 6.5], degrees: 170 },
  ],
  pieces: [
    { outline: rectangle([-3.5, -5], [4.5, 4.5], 12), paint: plain(0.1, 0.25, 0.5) },
    { outline: rectangle([3, -5], [3.5, 5], -20), paint: dots([0.6, 0.3, 0.3], [0.1, 0.1, 0.1]) },
    { outline: rectangle([0, 6], [11, 2.5], 4), paint: stripes([0.7, 0.7, 0.2], [0.05, 0.2, 0.1]) },
    { outline: triangle([-4.5, -0.5], [4, 4], 30), paint: plain(0.03, 0.03, 0.04) },
  ],
  fall: 0.3,
  cast: [0.9, 0.85, 0.7],
  noise: 2,
  seed: 1,
};

/** All round it the photo shows what it lies on. */
const matOnBoards: Paint = (spot) =>
  Math.abs(spot[0]) < 13.2 && Math.abs(spot[1]) < 9.6
    ? mat([0.03, 0.08, 0.06])(spot)
    : wood([0.25, 0.16, 0.09])(spot);

const photoOf = (scene: Scene) => measurePhoto(render(scene), vision, { printed: 1 });

/** The piece whose outline holds the middle of one that was laid. */
function pieceAt(scene: Scene, { pieces }: MeasuredPhoto, which: number): MeasuredPiece | undefined {
  const outline = scene.pieces[which]?.outline ?? [];
  const middle = [0, 1].map(
    (axis) => outline.reduce((sum, spot) => sum + (spot[axis] ?? 0), 0) / outline.length,
  );
  const pixel = pixelOf(scene, [middle[0] ?? 0, middle[1] ?? 0]);
  return pieces.find(({ pixels }) => isInside(pixels, pixel));
}

/** How far the corner furthest off lies from a corner of the piece as it was laid, in pixels. */
function furthestOff(scene: Scene, piece: MeasuredPiece | undefined, which: number): number {
  const corners = (scene.pieces[which]?.outline ?? []).map((spot) => pixelOf(scene, spot));
  const off = (piece?.pixels ?? []).map(([x, y]) =>
    Math.min(...corners.map((at: Spot) => Math.hypot(at[0] - x, at[1] - y))),
  );
  return off.length === corners.length ? Math.max(...off) : Number.POSITIVE_INFINITY;
}

const laid = [
  ["square", 4.5, 4.5, 4.375, 4.375],
  ["rectangle", 3.5, 5, 3.375, 4.875],
  ["strip", 2.5, 11, 2.375, 10.875],
  ["triangle", 4, 4, 3.875, 3.875],
] as const;

describe.each([
  ["boards", wood([0.25, 0.16, 0.09]), 15],
  ["a gridded mat", mat([0.03, 0.08, 0.06]), 25],
  ["a mat whose edges are in the photo", matOnBoards, 15],
])("a photo of four pieces on %s", (_, floor, tilt) => {
  const scene: Scene = { ...table, floor, tilt };
  let measured: MeasuredPhoto = { cards: [], residual: null, warnings: [], pieces: [] };
  beforeAll(() => {
    measured = photoOf(scene);
  }, 60_000);

  it("gives the pieces and nothing else, each as it was cut, and promises no more", () => {
    expect(measured).toMatchObject({ cards: [0, 1, 2, 3], warnings: [] });
    expect(measured.residual).toBeLessThan(0.3);
    expect(measured.pieces).toHaveLength(laid.length);
    laid.forEach(([kind, width, height, least, most], which) => {
      const piece = pieceAt(scene, measured, which);
      expect(piece).toMatchObject({ kind, width: least, height: most, check: [] });
      expect(Math.abs((piece?.measured.width ?? 0) - width)).toBeLessThan(0.03);
      expect(Math.abs((piece?.measured.height ?? 0) - height)).toBeLessThan(0.03);
      expect(furthestOff(scene, piece, which)).toBeLessThan(1.5);
    });
  });

  it("tells their colors in white light, and plain cloth from busy", () => {
    const [blue, dotted, striped, black] = laid.map((_, which) => pieceAt(scene, measured, which));
    // CIELAB of the paints by hand: sRGB's matrix, D65.
    const blueLab = { l: 57.6, a: -0.7, b: -32.4 };
    expect(colourDifference(blue?.colours[0]?.lab ?? { l: 0, a: 0, b: 0 }, blueLab)).toBeLessThan(3);
    expect(blue?.colours).toHaveLength(1);
    expect(black?.colours).toHaveLength(1);
    // Between stripes some pixels are half and half; the cloth's own two come first.
    const shares = (striped?.colours ?? []).slice(0, 2).map(({ share }) => share);
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeGreaterThan(0.7);
    expect(dotted?.colours[0]?.share).toBeGreaterThan(0.6);
    expect(striped?.busyness).toBeGreaterThan(3 * (blue?.busyness ?? 99));
  });
});

describe("a shadow over part of the floor", () => {
  // CIELAB of its paint by hand: sRGB's matrix, D65.
  const blueLab = { l: 57.6, a: -0.7, b: -32.4 };
  const shadow = { at: [-3.5, -5] as const, reach: 5, takes: 0.35 };

  it.each([
    // As the photo shows it, it is 10 off.
    ["in it, cloth has nearly the color it has outside of it", [shadow], 5],
    ["without it, boards of other tones change no color", [], 3],
  ])("%s", (_, pools, least) => {
    const scene: Scene = { ...table, pools };
    const lab = pieceAt(scene, photoOf(scene), 0)?.colours[0]?.lab ?? { l: 0, a: 0, b: 0 };
    expect(colourDifference(lab, blueLab)).toBeLessThan(least);
  });
});

describe("what must be looked at", () => {
  const few = { ...table, width: 560, height: 420, focal: 440 };

  it("is all of it with fewer than three cards", () => {
    const scene: Scene = { ...few, cards: table.cards.slice(0, 2), pieces: table.pieces.slice(0, 1) };
    const measured = photoOf(scene);
    expect(measured.warnings).toEqual(["few-cards"]);
    expect(measured.pieces.length).toBeGreaterThan(0);
    for (const { check } of measured.pieces) expect(check).toContain("one-sheet");
  });

  it("is what the photo cuts off and what two pieces may be, not what is clearly slanted", () => {
    const scene: Scene = {
      ...few,
      floor: plain(0.3, 0.3, 0.3),
      pieces: [
        { outline: rectangle([0, -10], [4, 9], 0), paint: plain(0.6, 0.1, 0.1) },
        { outline: rectangle([-3, 0], [4, 4], 0), paint: plain(0.1, 0.3, 0.6) },
        { outline: rectangle([0.6, 2], [4, 4], 20), paint: plain(0.1, 0.3, 0.6) },
        {
          outline: [
            [-2, 5],
            [3, 5.5],
            [2, 8.5],
            [-3, 8],
          ],
          paint: plain(0.05, 0.05, 0.05),
        },
      ],
    };
    const measured = photoOf(scene);
    // Two that overlap are cut apart where their outline turns inwards, and that is said of both.
    expect(pieceAt(scene, measured, 1)?.check).toContain("may-be-one");
    expect(pieceAt(scene, measured, 3)).toMatchObject({ kind: "odd", check: [] });
    const red = measured.pieces.filter(({ colours }) => (colours[0]?.lab.a ?? 0) > 30);
    expect(red.map(({ check }) => check[0])).toEqual(["cut-off"]);
  });

  it("is nothing where no card is seen: then no size is known", () => {
    const scene: Scene = { ...few, width: 320, height: 240, focal: 250, cards: [] };
    expect(photoOf(scene)).toEqual({ cards: [], residual: null, warnings: [], pieces: [] });
  });
});

describe("what is written of it", () => {
  const piece: MeasuredPiece = {
    kind: "square",
    width: 4.375,
    height: 4.375,
    measured: { width: 4.50123, height: 4.49999 },
    pixels: [
      [1.234, 2],
      [3, 2],
      [3, 4],
    ],
    colours: [{ lab: { l: 57.123, a: -0.001, b: -32 }, share: 1 }],
    busyness: 2.3456,
    check: ["near-floor"],
  };
  const tiny: MeasuredPiece = { ...piece, kind: "odd", width: 0, height: 0.5 };
  const measured: MeasuredPhoto = {
    cards: [0, 1],
    residual: 0.12345,
    warnings: ["few-cards"],
    pieces: [piece, tiny],
  };
  const files = [
    { file: "a.jpg", measured: { ...measured, pieces: [] } },
    { file: "b.jpg", measured },
  ];

  it("is one document for all photos", () => {
    expect(JSON.parse(writePieces(files))).toEqual({
      format: "verso-pieces",
      version: 1,
      unit: "in",
      photos: ["a.jpg", "b.jpg"].map((file) => ({
        file,
        cards: [0, 1],
        residual: 0.123,
        warnings: ["few-cards"],
      })),
      pieces: [
        {
          photo: 1,
          kind: "square",
          width: 4.375,
          height: 4.375,
          measured: { width: 4.5012, height: 4.5 },
          pixels: [
            [1.23, 2],
            [3, 2],
            [3, 4],
          ],
          colours: [{ lab: [57.12, 0, -32], share: 1 }],
          busyness: 2.35,
          check: ["near-floor"],
        },
        expect.objectContaining({ kind: "odd", width: 0 }),
      ],
    });
  });

  it("is a table that reads back, without what is too small to promise", () => {
    const text = writePiecesTable(files, {
      fabric: (number) => `cloth ${number}`,
      checkHeading: "check",
      check: ({ check }) => check.join(" "),
    });
    const { pieces, problems, others } = readLeftovers(new TextEncoder().encode(text), "in");
    expect(problems).toEqual([]);
    expect(pieces).toMatchObject([
      { kind: "square", width: 4.375 * 8128, count: 1, fabric: "cloth 1", row: 2 },
    ]);
    expect(others[0]?.cells.get(2)).toBe("near-floor");
  });
});
