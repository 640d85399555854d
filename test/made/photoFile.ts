import sharp from "sharp";
import { render } from "./render.ts";
import { dots, plain, rectangle, type Scene, stripes, triangle, wood } from "./scene.ts";

/** A table top with four cards and six pieces, two of them alike, as a phone held a little askew would see it. */
export const tableTop: Scene = {
  width: 1200,
  height: 900,
  focal: 940,
  k1: 0.04,
  tilt: 12,
  towards: 70,
  far: 25,
  looksAt: [0, 0],
  floor: wood([0.25, 0.16, 0.09]),
  cards: [
    { first: 0, at: [-9.5, -6.5], degrees: 5 },
    { first: 1, at: [9.5, -6.5], degrees: 95 },
    { first: 2, at: [9.5, 6.5], degrees: -12 },
    { first: 3, at: [-9.5, 6.5], degrees: 170 },
  ],
  pieces: [
    { outline: rectangle([-3.4, -5], [4.55, 4.55], 12), paint: plain(0.1, 0.25, 0.5) },
    { outline: rectangle([3, -5], [3.55, 5.05], -20), paint: dots([0.6, 0.3, 0.3], [0.1, 0.1, 0.1]) },
    { outline: rectangle([0, 6.6], [11.05, 2.55], 4), paint: stripes([0.7, 0.7, 0.2], [0.05, 0.2, 0.1]) },
    { outline: triangle([-3.6, 0], [4.05, 4.05], 30), paint: plain(0.03, 0.03, 0.04) },
    { outline: rectangle([2, 0.6], [3.05, 3.05], 8), paint: plain(0.55, 0.5, 0.4) },
    { outline: rectangle([7, 0.2], [3.05, 3.05], 30), paint: plain(0.55, 0.5, 0.4) },
  ],
  fall: 0.3,
  cast: [0.9, 0.85, 0.7],
  noise: 2,
  seed: 1,
};

/** The same, the two alike a quarter of an inch apart: nearer than she is asked to lay them. */
export const twoNear: Scene = {
  ...tableTop,
  pieces: [
    ...tableTop.pieces.slice(0, 5),
    { outline: rectangle([5.71, 1.12], [3.05, 3.05], 30), paint: plain(0.55, 0.5, 0.4) },
  ],
};

/** A scene as the file that a camera would make of it. */
export function photoFile(scene: Scene): Promise<Buffer> {
  const { width, height, rgba } = render(scene);
  return sharp(rgba, { raw: { width, height, channels: 4 } })
    .jpeg({ quality: 90 })
    .toBuffer();
}
