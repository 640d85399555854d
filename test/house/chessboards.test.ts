import { describe, expect, it } from "vitest";
import { boardRow } from "../../bench/boardRow.ts";
import { boardIn, type Grey } from "../../bench/chessboard.ts";
import { madeBoard } from "../made/board.ts";
import { evenly } from "../made/chance.ts";
import { floorOf, floors } from "../made/floors.ts";
import { render } from "../made/render.ts";
import { pixelOf, type Scene } from "../made/scene.ts";

/** A small photo through a lens that bends much. */
function sceneWith(pieces: Scene["pieces"], tilt: number, towards: number): Scene {
  const lens = { width: 640, height: 480, focal: 530, k1: -0.25, spread: 0.2 };
  const rest = { cards: [], fall: 0.2, cast: [1, 1, 1] as const, noise: 2, seed: 3 };
  const stand = { tilt, towards, far: 14, looksAt: [1, 0.5] as const };
  return { ...lens, ...rest, ...stand, floor: floorOf(floors[0], evenly(5)), pieces };
}

function greyOf(scene: Scene): Grey {
  const { width, height, rgba } = render(scene);
  return {
    width,
    height,
    bytes: Uint8Array.from({ length: width * height }, (_, at) => rgba[4 * at + 1] ?? 0),
  };
}

describe("a chessboard in a photograph", () => {
  it.each([
    [4, 0, 0],
    [-30, 25, 70],
    [80, 35, 200],
  ])(
    "turned by %i°, seen at %i° towards %i°: its corners are found, and lengths on it hold to a hundredth",
    (degrees, tilt, towards) => {
      const { pieces, corners } = madeBoard(10, 7, degrees);
      const scene = sceneWith(pieces, tilt, towards);
      const picture = greyOf(scene);
      const found = boardIn(picture, 9, 6)?.flat() ?? [];
      expect(found).toHaveLength(54);
      const off = corners.flat().map((corner) => {
        const [x, y] = pixelOf(scene, corner);
        return Math.min(...found.map((place) => Math.hypot(place[0] - x, place[1] - y)));
      });
      expect(Math.max(...off)).toBeLessThan(0.3);
      const sizes = boardRow("made", picture).off.map(Math.abs);
      expect(sizes).toHaveLength(48);
      expect(Math.max(...sizes)).toBeLessThan(1);
    },
  );

  it("is not seen where there is none, nor where a corner of it is out of sight", () => {
    expect(boardIn(greyOf(sceneWith([], 10, 0)), 9, 6)).toBeNull();
    expect(boardIn(greyOf(sceneWith(madeBoard(9, 7, 10).pieces, 10, 0)), 9, 6)).toBeNull();
  });
});
