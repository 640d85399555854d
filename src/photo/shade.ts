import type { Lab } from "../engine/cloth/index.ts";
import type { Lying } from "./calibrate.ts";
import { type FloorPicture, pixelOn } from "./floorPicture.ts";
import { floorColourAt, type Ground } from "./ground.ts";
import { median } from "./lines.ts";
import type { Polygon } from "./polygon.ts";
import { ringsRound } from "./rings.ts";

/** Cube roots of X, Y and Z as CIELAB has them: light that is halved takes the same share of all three. */
type Roots = readonly [number, number, number];

/** The colour that cloth would have without the shadow that the floor round it lies in. */
export type Unshaded = (polygon: Polygon) => (lab: Lab) => Lab;

// Of a root: what the best of floors differs from place to place.
const evenest = 0.012;
const trust = 4;

/**
 * Paper tells how light falls where cards lie, and a plane between them. Where the floor itself is darker than beside the
 * cards it lies in shadow, or is another board: that is believed as far as it is more than what it differs from card to card.
 */
export function unshadedBy(picture: FloorPicture, ground: Ground, lying: readonly Lying[]): Unshaded {
  const cards = ringsRound(picture, lying, ground.covered)
    .filter((ring) => ring.length > 0)
    .map((ring) => meanOf(ring.filter((_, n) => n % every === 0).map((at) => floorAt(picture, ground, at))));
  const usual = [0, 1, 2].map((channel) => median(cards.map((roots) => roots[channel] ?? 0)));
  const strays = cards.map(([, y]) => Math.log(y / (usual[1] ?? y)) ** 2);
  const differs = evenest ** 2 + strays.reduce((sum, stray) => sum + stray, 0) / Math.max(1, strays.length);
  return (polygon) => {
    const near = meanOf(polygon.map((place) => rootsOf(floorColourAt(ground, pixelOn(picture, place)))));
    return inLight(
      near.map((root, channel) => Math.log((usual[channel] ?? root) / root)),
      differs,
    );
  };
}

// Of the pixels round a card.
const every = 40;

function floorAt(picture: FloorPicture, ground: Ground, at: number): Roots {
  return rootsOf(floorColourAt(ground, [at % picture.width, Math.floor(at / picture.width)]));
}

/** `lacks`: of each root, the logarithm of what the floor has elsewhere; `differs`: the square of what it may lack anywhere. */
function inLight([lackX = 0, lackY = 0, lackZ = 0]: readonly number[], differs: number): (lab: Lab) => Lab {
  const believed = lackY ** 2 / (lackY ** 2 + trust * differs);
  const [x, y, z] = [Math.exp(believed * lackX), Math.exp(believed * lackY), Math.exp(believed * lackZ)];
  return (lab) => {
    const [u, v, w] = rootsOf(lab);
    return { l: 116 * v * y - 16, a: 500 * (u * x - v * y), b: 200 * (v * y - w * z) };
  };
}

function rootsOf({ l, a, b }: Lab): Roots {
  const y = (l + 16) / 116;
  return [Math.max(0.01, y + a / 500), y, Math.max(0.01, y - b / 200)];
}

function meanOf(all: readonly Roots[]): Roots {
  const mean = (channel: 0 | 1 | 2) =>
    all.reduce((sum, roots) => sum + roots[channel], 0) / Math.max(1, all.length);
  return [mean(0), mean(1), mean(2)];
}
