import { normals, waves } from "./chance.ts";
import {
  floorUnder,
  type Paint,
  type Rendered,
  type Rgb,
  type Scene,
  type ScenePiece,
  type Shadow,
  type Spot,
} from "./scene.ts";
import { cardPiece } from "./sceneCards.ts";

/** The photo a scene gives: what the lens blurs, the sensor's noise and the bytes of sRGB. */
export function render(scene: Scene): Rendered {
  const { width, height } = scene;
  const light = blurred(lightOn(scene), width, scene.spread ?? 0);
  const byteOf = bytes(scene.tone ?? 0);
  const noise = noiseOf(scene);
  // Clamped arrays round to the nearest and hold what goes beyond.
  const rgba = new Uint8ClampedArray(4 * width * height).fill(255);
  for (let at = 0; at < width * height; at += 1)
    for (let channel = 0; channel < 3; channel += 1) {
      const level = Math.round(levels * Math.max(0, Math.min(1, light[3 * at + channel] ?? 0)));
      rgba[4 * at + channel] = (byteOf[level] ?? 0) + (noise[(3 * at + channel) % noise.length] ?? 0);
    }
  return { width, height, rgba: new Uint8Array(rgba.buffer) };
}

/** Linear light of each pixel, three numbers each. */
function lightOn(scene: Scene): Float32Array {
  const { width, height } = scene;
  const [spots, things] = [spotsOf(scene), thingsOn(scene)];
  const spotAt = (at: number): Spot => [spots[2 * at] ?? 0, spots[2 * at + 1] ?? 0];
  const owners = new Int16Array(width * height);
  for (let at = 0; at < owners.length; at += 1) owners[at] = things.ownerOf(spotAt(at));
  const light = new Float32Array(3 * width * height);
  for (let at = 0; at < owners.length; at += 1) {
    const owner = owners[at] ?? -1;
    // Cards are full of edges.
    const isEdge =
      (owner >= 0 && owner < scene.cards.length) ||
      (owners[at - 1] ?? owner) !== owner ||
      (owners[at + 1] ?? owner) !== owner ||
      (owners[at - width] ?? owner) !== owner ||
      (owners[at + width] ?? owner) !== owner;
    const beyond = at + width < owners.length && at + 1 < owners.length;
    const seen =
      isEdge && beyond
        ? spread(things, spotAt(at), [spotAt(at + 1), spotAt(at + width)])
        : things.lightOf(spotAt(at), owner);
    light[3 * at] = seen[0];
    light[3 * at + 1] = seen[1];
    light[3 * at + 2] = seen[2];
  }
  return light;
}

function spotsOf(scene: Scene): Float32Array {
  const { width, height } = scene;
  const floorAt = floorUnder(scene);
  const spots = new Float32Array(2 * width * height);
  for (let at = 0; at < width * height; at += 1) {
    const spot = floorAt([at % width, Math.floor(at / width)]);
    spots[2 * at] = spot[0];
    spots[2 * at + 1] = spot[1];
  }
  return spots;
}

/** Where things end, the mean of sixteen places in the pixel; the floor is flat enough for straight steps. */
function spread({ ownerOf, lightOf }: Things, spot: Spot, [right, below]: readonly [Spot, Spot]): Rgb {
  const sum: [number, number, number] = [0, 0, 0];
  for (let n = 0; n < 16; n += 1) {
    const [i, j] = [((n % 4) - 1.5) / 4, (Math.floor(n / 4) - 1.5) / 4];
    const place: Spot = [
      spot[0] + i * (right[0] - spot[0]) + j * (below[0] - spot[0]),
      spot[1] + i * (right[1] - spot[1]) + j * (below[1] - spot[1]),
    ];
    const light = lightOf(place, ownerOf(place));
    sum[0] += light[0] / 16;
    sum[1] += light[1] / 16;
    sum[2] += light[2] / 16;
  }
  return sum;
}

type Things = {
  /** What lies at a spot, by number; -1 for the floor. */
  readonly ownerOf: (spot: Spot) => number;
  readonly lightOf: (spot: Spot, owner: number) => Rgb;
};

type Thing = ScenePiece & { readonly sides: readonly Side[]; readonly number: number };
/** Inwards of it is where x · u + y · v > off. */
type Side = { readonly u: number; readonly v: number; readonly off: number };

function thingsOn(scene: Scene): Things {
  const laid = [...scene.cards.map(cardPiece), ...scene.pieces].map(
    (piece, number): Thing => ({ ...piece, number, sides: sidesOf(piece.outline) }),
  );
  const near = nearTo(laid);
  const lit = lightFalling(scene);
  const ownerOf = (spot: Spot) => {
    for (const thing of near(spot)) if (covers(thing, spot)) return thing.number;
    return -1;
  };
  const { cast, shadow } = scene;
  const lightOf = (spot: Spot, owner: number): Rgb => {
    const paint = owner < 0 ? scene.floor : (laid[owner]?.paint ?? scene.floor);
    const own = paint(spot);
    const light = lit(spot) * (owner < 0 && shadow ? 1 - shadowAt(shadow, near(spot), spot) : 1);
    return [own[0] * light * cast[0], own[1] * light * cast[1], own[2] * light * cast[2]];
  };
  return { ownerOf, lightOf };
}

function sidesOf(outline: readonly Spot[]): Side[] {
  return outline.map(([x, y], at) => {
    const [nextX, nextY] = outline[(at + 1) % outline.length] ?? [x, y];
    const far = Math.hypot(nextX - x, nextY - y);
    const [u, v] = [-(nextY - y) / far, (nextX - x) / far];
    return { u, v, off: u * x + v * y };
  });
}

function covers({ sides, fray = 0, number }: Thing, spot: Spot): boolean {
  const depth = depthIn(sides, spot);
  if (depth > 3 * fray) return true;
  if (depth <= -3 * fray) return false;
  return (
    depth + fray * (waves(spot[0] * 9, spot[1] * 9, number) + waves(spot[0] * 30, spot[1] * 30, number)) > 0
  );
}

/** How far inside the sides; less than 0 outside. */
function depthIn(sides: readonly Side[], spot: Spot): number {
  let least = Number.POSITIVE_INFINITY;
  for (let at = 0; at < sides.length; at += 1) {
    const side = sides[at];
    if (side) least = Math.min(least, spot[0] * side.u + spot[1] * side.v - side.off);
  }
  return least;
}

const blockSize = 2;
const blocksAlong = 256;
const nothing: readonly Thing[] = [];

/** What lies in or near each square of two inches. */
function nearTo(laid: readonly Thing[]): (spot: Spot) => readonly Thing[] {
  const blocks: (readonly Thing[])[] = new Array(blocksAlong * blocksAlong).fill(nothing);
  for (const thing of laid) {
    const [xs, ys] = [thing.outline.map(([x]) => x), thing.outline.map(([, y]) => y)];
    for (let row = blockOf(Math.min(...ys) - 1); row <= blockOf(Math.max(...ys) + 1); row += 1)
      for (let column = blockOf(Math.min(...xs) - 1); column <= blockOf(Math.max(...xs) + 1); column += 1) {
        const at = blocksAlong * row + column;
        blocks[at] = [...(blocks[at] ?? []), thing];
      }
  }
  return (spot) => blocks[blocksAlong * blockOf(spot[1]) + blockOf(spot[0])] ?? nothing;
}

function blockOf(value: number): number {
  return Math.floor(value / blockSize) + blocksAlong / 2;
}

function shadowAt({ aside, soft, takes }: Shadow, things: readonly Thing[], spot: Spot): number {
  let most = 0;
  for (let at = 0; at < things.length; at += 1) {
    const depth = depthIn(things[at]?.sides ?? [], [spot[0] - aside[0], spot[1] - aside[1]]);
    if (depth > -soft) most = Math.max(most, smooth((depth + soft) / (2 * soft)));
  }
  return takes * most;
}

function lightFalling({ fall, looksAt, pools = [], shades = [] }: Scene): (spot: Spot) => number {
  const middle = looksAt[0];
  const shaded = shades.map((shade) => ({ ...shade, sides: sidesOf(shade.outline) }));
  return (spot) => {
    let light = 1 - fall * Math.min(1, Math.max(0, 0.5 + (spot[0] - middle) / 40));
    for (const { at, reach, takes } of pools)
      light *= 1 - takes * smooth(1.5 - Math.hypot(spot[0] - at[0], spot[1] - at[1]) / reach);
    let most = 0;
    for (const { sides, soft, takes } of shaded)
      most = Math.max(most, takes * smooth((depthIn(sides, spot) + soft) / (2 * soft)));
    return light * (1 - most);
  };
}

function smooth(share: number): number {
  const held = Math.max(0, Math.min(1, share));
  return held * held * (3 - 2 * held);
}

function blurred(light: Float32Array, width: number, spread: number): Float32Array {
  if (spread === 0) return light;
  const along = (from: Float32Array, step: number) => {
    const to = from.slice();
    for (let at = step; at < from.length - step; at += 1)
      to[at] =
        (1 - 2 * spread) * (from[at] ?? 0) + spread * ((from[at - step] ?? 0) + (from[at + step] ?? 0));
    return to;
  };
  return along(along(light, 3), 3 * width);
}

const levels = 8192;

/** A byte, not yet rounded, for each level of light. A phone's curve darkens what is dark and lightens what is light. */
function bytes(tone: number): Float32Array {
  return Float32Array.from({ length: levels + 1 }, (_, level) => {
    const value = level / levels;
    const byte = value <= 0.0031308 ? 12.92 * value : 1.055 * value ** (1 / 2.4) - 0.055;
    return 255 * (byte - (tone * Math.sin(2 * Math.PI * byte)) / (2 * Math.PI));
  });
}

/** So many that nothing repeats in sight. */
function noiseOf({ noise, seed }: Scene): Float32Array {
  const normal = normals(seed);
  return Float32Array.from({ length: 99_991 }, () => noise * normal());
}

/** For what is only looked at: the mean of a paint over some spots. */
export function meanOf(paint: Paint, spots: readonly Spot[]): Rgb {
  const sum = spots
    .map(paint)
    .reduce<Rgb>((all, [r, g, b]) => [all[0] + r, all[1] + g, all[2] + b], [0, 0, 0]);
  return [sum[0] / spots.length, sum[1] / spots.length, sum[2] / spots.length];
}
