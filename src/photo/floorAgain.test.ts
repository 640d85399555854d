import { expect, it } from "vitest";
import { tableTop } from "../../test/made/photoFile.ts";
import { render } from "../../test/made/render.ts";
import { isInside, pixelOf, plain, rectangle, type Scene, type ScenePiece } from "../../test/made/scene.ts";
import { vision } from "../../test/made/vision.ts";
import { type OpenPhoto, openPhoto, withFloorAt } from "./measure.ts";

const laid: readonly ScenePiece[] = [
  { outline: rectangle([-2.6, -3.6], [4.6, 4.6], 12), paint: plain(0.1, 0.25, 0.5) },
  { outline: rectangle([3, -3.6], [3.6, 5.1], -10), paint: plain(0.6, 0.3, 0.3) },
  { outline: rectangle([0, 4.6], [9.1, 2.1], 4), paint: plain(0.7, 0.7, 0.2) },
];

/** The cards lie on a napkin each, so that what is round them is no floor. */
const cards = tableTop.cards.map((card) => ({
  ...card,
  at: [card.at[0] * 1.15, card.at[1] * 1.15] as const,
}));
const napkins = cards.map(
  ({ at: [x, y], degrees }): ScenePiece => ({
    outline: rectangle([x, y], [7.8, 7.8], degrees),
    paint: plain(0.2, 0.4, 0.2),
  }),
);
const scene: Scene = { ...tableTop, cards, far: 30, pieces: [...napkins, ...laid] };

const sizesIn = ({ measured: { pieces } }: OpenPhoto) =>
  laid.map(({ outline }) => {
    const [x, y] = [0, 1].map(
      (axis) => outline.reduce((sum, spot) => sum + (spot[axis] ?? 0), 0) / outline.length,
    );
    const middle = pixelOf(scene, [x ?? 0, y ?? 0]);
    const piece = pieces.find(({ pixels }) => pixels.length === 4 && isInside(pixels, middle));
    return piece && [piece.width, piece.height];
  });

it("where the cards lie on something else, what she taps is the floor, and the pieces are found", () => {
  const opened = openPhoto(render(scene), vision, { printed: 1 });
  if (!("measured" in opened)) throw new Error("the cards are there to be found");
  expect(sizesIn(opened)).not.toEqual([
    [4.5, 4.5],
    [3.5, 5],
    [2, 9],
  ]);
  const again = withFloorAt(opened, vision, pixelOf(scene, [0, 1.2]));
  if (again === null) throw new Error("the floor is there to be tapped");
  expect(sizesIn(again)).toEqual([
    [4.5, 4.5],
    [3.5, 5],
    [2, 9],
  ]);
  expect(withFloorAt(opened, vision, pixelOf(scene, scene.cards[0]?.at ?? [0, 0]))).toBeNull();
  expect(withFloorAt(opened, vision, [-4000, -4000])).toBeNull();
}, 120_000);
