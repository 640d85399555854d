import { cellsAlongMarker, isBlack, targets } from "../../src/engine/cards/index.ts";
import { toNumber } from "../../src/engine/length/index.ts";

/**
 * Photographs of invented floors, rendered: a pinhole camera with radial distortion over cards and pieces of cloth,
 * light that falls off to one side, noise. It shares no formula with the room it tests. Inches, x to the right and y
 * down the floor; light is linear.
 */
export type Scene = {
  readonly width: number;
  readonly height: number;
  /** In pixels. */
  readonly focal: number;
  readonly k1: number;
  /** From straight down, in degrees, and to which side. */
  readonly tilt: number;
  readonly towards: number;
  /** The camera is so far from the place on the floor it looks at. */
  readonly far: number;
  readonly looksAt: Spot;
  readonly floor: Paint;
  /** Which cards and sheets, by their first marker. */
  readonly cards: readonly { readonly first: number; readonly at: Spot; readonly degrees: number }[];
  readonly pieces: readonly ScenePiece[];
  /** How much of the light is lost from left to right. */
  readonly fall: number;
  readonly cast: Rgb;
  readonly noise: number;
  readonly seed: number;
};

export type Spot = readonly [number, number];
export type Rgb = readonly [number, number, number];
export type Paint = (spot: Spot) => Rgb;
export type ScenePiece = { readonly outline: readonly Spot[]; readonly paint: Paint };
export type Rendered = { readonly width: number; readonly height: number; readonly rgba: Uint8Array };

const paper: Rgb = [0.86, 0.86, 0.85];
const ink: Rgb = [0.03, 0.03, 0.03];

export function render(scene: Scene): Rendered {
  const { width, height, noise, seed } = scene;
  const rgba = new Uint8Array(4 * width * height);
  const normal = normals(seed);
  const floorAt = floorUnder(scene);
  const { ownerOf, lightOf } = thingsOn(scene);
  const owners = new Int16Array(width * height);
  const spots = Array.from(owners, (_, at) => floorAt([at % width, Math.floor(at / width)]));
  spots.forEach((spot, at) => {
    owners[at] = ownerOf(spot);
  });
  spots.forEach((spot, at) => {
    const owner = owners[at] ?? -1;
    // Cards are full of edges.
    const isEdge =
      (owner >= 0 && owner < scene.cards.length) ||
      [at - 1, at + 1, at - width, at + width].some((beside) => (owners[beside] ?? owner) !== owner);
    const light = isEdge
      ? spread(spot, spots[at + 1] ?? spot, spots[at + width] ?? spot)
      : lightOf(spot, owner);
    light.forEach((value, channel) => {
      rgba[4 * at + channel] = Math.max(0, Math.min(255, Math.round(byteOf(value) + noise * normal())));
    });
    rgba[4 * at + 3] = 255;
  });
  return { width, height, rgba };

  /** Where things end, the mean of sixteen places in the pixel; the floor is flat enough for straight steps. */
  function spread(spot: Spot, right: Spot, below: Spot): Rgb {
    const sum: [number, number, number] = [0, 0, 0];
    for (let n = 0; n < 16; n += 1) {
      const [i, j] = [((n % 4) - 1.5) / 4, (Math.floor(n / 4) - 1.5) / 4];
      const place: Spot = [
        spot[0] + i * (right[0] - spot[0]) + j * (below[0] - spot[0]),
        spot[1] + i * (right[1] - spot[1]) + j * (below[1] - spot[1]),
      ];
      const light = lightOf(place, ownerOf(place));
      for (const channel of [0, 1, 2] as const) sum[channel] += light[channel] / 16;
    }
    return sum;
  }
}

/** The camera's axes in the floor's: right, down and ahead. */
function axesOf({ tilt, towards }: Scene): readonly (readonly [number, number, number])[] {
  const [t, p] = [(tilt * Math.PI) / 180, (towards * Math.PI) / 180];
  const [ct, st, cp, sp] = [Math.cos(t), Math.sin(t), Math.cos(p), Math.sin(p)];
  // Straight down it looks along z; tilted, it looks ahead along (cos p, sin p) as well.
  const ahead = [st * cp, st * sp, ct] as const;
  const level = [-sp, cp, 0] as const;
  const up = [ct * cp, ct * sp, -st] as const;
  const mix = (one: number, other: number) =>
    [0, 1, 2].map((k) => one * (up[k] ?? 0) + other * (level[k] ?? 0));
  const triple = ([x = 0, y = 0, z = 0]: readonly number[]) => [x, y, z] as const;
  return [triple(mix(cp, -sp)), triple(mix(sp, cp)), ahead];
}

function floorUnder(scene: Scene): (pixel: Spot) => Spot {
  const [right, down, ahead] = axesOf(scene);
  if (!right || !down || !ahead) throw new Error("a camera has three axes");
  const { width, height, focal, k1, far, looksAt } = scene;
  const eye = [looksAt[0] - far * ahead[0], looksAt[1] - far * ahead[1], -far * ahead[2]] as const;
  return ([x, y]) => {
    const [bentX, bentY] = [(x - (width - 1) / 2) / focal, (y - (height - 1) / 2) / focal];
    let [u, v] = [bentX, bentY];
    for (let round = 0; round < 8; round += 1) {
      const stretch = 1 + k1 * (u * u + v * v);
      u = bentX / stretch;
      v = bentY / stretch;
    }
    const times = -eye[2] / (u * right[2] + v * down[2] + ahead[2]);
    return [
      eye[0] + times * (u * right[0] + v * down[0] + ahead[0]),
      eye[1] + times * (u * right[1] + v * down[1] + ahead[1]),
    ];
  };
}

/** The pixel that shows a spot, by search: the renderer knows one way only. */
export function pixelOf(scene: Scene, [x, y]: Spot): Spot {
  const floorAt = floorUnder(scene);
  let at: Spot = [scene.width / 2, scene.height / 2];
  for (let round = 0; round < 30; round += 1) {
    const [here, beside, below] = [floorAt(at), floorAt([at[0] + 1, at[1]]), floorAt([at[0], at[1] + 1])];
    const [a, c] = [beside[0] - here[0], beside[1] - here[1]];
    const [b, d] = [below[0] - here[0], below[1] - here[1]];
    const [dx, dy, turn] = [x - here[0], y - here[1], a * d - b * c];
    at = [at[0] + (d * dx - b * dy) / turn, at[1] + (a * dy - c * dx) / turn];
  }
  return at;
}

/** What lies at a spot, by number, -1 for the floor; and its light. */
function thingsOn({ floor, cards, pieces, fall, cast, looksAt }: Scene) {
  const laid = [...cards.map(cardPiece), ...pieces].map((piece) => ({ ...piece, box: boxOf(piece.outline) }));
  const ownerOf = (spot: Spot) =>
    laid.findIndex(({ box, outline }) => inBox(box, spot) && isInside(outline, spot));
  const lightOf = (spot: Spot, owner: number): Rgb => {
    const [r, g, b] = (laid[owner]?.paint ?? floor)(spot);
    const light = 1 - fall * Math.min(1, Math.max(0, 0.5 + (spot[0] - looksAt[0]) / 40));
    return [r * light * cast[0], g * light * cast[1], b * light * cast[2]];
  };
  return { ownerOf, lightOf };
}

/** A card of Letter, or a whole sheet. */
function cardPiece({ first, at, degrees }: Scene["cards"][number]): ScenePiece {
  const target = targets.find(({ markers }) => markers[0]?.id === first);
  const markers = (target?.markers ?? []).flatMap(({ id, corners: [from, , to] }) => {
    if (from === undefined || to === undefined) return [];
    const [left, top, right] = [toNumber(from.x, "in"), toNumber(from.y, "in"), toNumber(to.x, "in")];
    return [{ id, left, top, cell: (right - left) / cellsAlongMarker }];
  });
  const [cosine, sine] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const paint: Paint = (spot) => {
    const [dx, dy] = [spot[0] - at[0], spot[1] - at[1]];
    const [x, y] = [cosine * dx + sine * dy, cosine * dy - sine * dx];
    for (const { id, left, top, cell } of markers) {
      const [column, row] = [Math.floor((x - left) / cell), Math.floor((y - top) / cell)];
      const isOn = column >= 0 && row >= 0 && column < cellsAlongMarker && row < cellsAlongMarker;
      if (isOn) return isBlack(id, row, column) ? ink : paper;
    }
    return paper;
  };
  return { outline: rectangle(at, first < 10 ? [4.25, 5.5] : [8.5, 11], degrees), paint };
}

function boxOf(outline: readonly Spot[]) {
  const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

function inBox(box: ReturnType<typeof boxOf>, [x, y]: Spot): boolean {
  return x >= box.left && x <= box.right && y >= box.top && y <= box.bottom;
}

/** By counting how often a ray to the right leaves and enters. */
export function isInside(outline: readonly Spot[], [x, y]: Spot): boolean {
  let inside = false;
  let [ax, ay] = outline[outline.length - 1] ?? [0, 0];
  for (const [bx, by] of outline) {
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
    ax = bx;
    ay = by;
  }
  return inside;
}

function byteOf(light: number): number {
  const value = Math.max(0, Math.min(1, light));
  return 255 * (value <= 0.0031308 ? 12.92 * value : 1.055 * value ** (1 / 2.4) - 0.055);
}

/** Even numbers from 0 to 1 by a linear congruence (Numerical Recipes' constants). */
export function evenly(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

/** Normal numbers (Box and Muller 1958). */
function normals(seed: number): () => number {
  const next = evenly(seed);
  return () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
}

/** A rectangle about `middle`, turned. */
export function rectangle([x, y]: Spot, [width, height]: Spot, degrees: number): Spot[] {
  return turned(
    [
      [-width / 2, -height / 2],
      [width / 2, -height / 2],
      [width / 2, height / 2],
      [-width / 2, height / 2],
    ],
    [x, y],
    degrees,
  );
}

/** A right-angled triangle, its right angle at `corner`. */
export function triangle(corner: Spot, [width, height]: Spot, degrees: number): Spot[] {
  return turned(
    [
      [0, 0],
      [width, 0],
      [0, height],
    ],
    corner,
    degrees,
  );
}

function turned(outline: readonly Spot[], [x, y]: Spot, degrees: number): Spot[] {
  const [cosine, sine] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return outline.map(([u, v]) => [x + cosine * u - sine * v, y + sine * u + cosine * v]);
}

// Paints.

export function plain(...colour: Rgb): Paint {
  return () => colour;
}

/** Boards along x, each of a tone of its own, with grain. */
export function wood(colour: Rgb): Paint {
  return ([x, y]) => {
    const board = Math.floor(y / 3.5);
    const tone = 1 + 0.08 * Math.sin(board * 12.9) + 0.03 * Math.sin(9 * y + 0.7 * Math.sin(x / 3));
    return scaled(colour, y - board * 3.5 < 0.05 ? 0.6 * tone : tone);
  };
}

/** Thin light lines an inch apart. */
export function mat(colour: Rgb): Paint {
  return ([x, y]) => {
    const off = (value: number) => Math.abs(value - Math.round(value));
    return off(x) < 0.02 || off(y) < 0.02 ? scaled(colour, 2.2) : colour;
  };
}

export function dots(ground: Rgb, dot: Rgb): Paint {
  return ([x, y]) => {
    const off = (value: number) => value / 0.5 - Math.round(value / 0.5);
    return Math.hypot(off(x), off(y)) < 0.28 ? dot : ground;
  };
}

export function stripes(one: Rgb, other: Rgb): Paint {
  return ([x, y]) => (Math.floor((x + 0.4 * y) / 0.3) % 2 === 0 ? one : other);
}

function scaled([r, g, b]: Rgb, by: number): Rgb {
  return [r * by, g * by, b * by];
}
