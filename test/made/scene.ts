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
  /** Broad soft shadows. */
  readonly pools?: readonly Pool[];
  /** Cast over all that lies there, with an edge that can be seen. */
  readonly shades?: readonly Shade[];
  /** Each piece's own on the floor. */
  readonly shadow?: Shadow;
  /** The share of a pixel's light that the lens spreads to each side: a quarter is much. */
  readonly spread?: number;
  /** How much a phone bends light and color to please: 0 is not at all. */
  readonly tone?: number;
};

/** Round `at`, reaching so far, taking so much of the light in its middle. */
export type Pool = { readonly at: Spot; readonly reach: number; readonly takes: number };
/** Inside of a convex outline, so soft at its edge, taking so much; where several meet the deepest counts. */
export type Shade = { readonly outline: readonly Spot[]; readonly soft: number; readonly takes: number };
/** Thrown so far aside, so soft at its edge, taking so much. */
export type Shadow = { readonly aside: Spot; readonly soft: number; readonly takes: number };

export type Spot = readonly [number, number];
export type Rgb = readonly [number, number, number];
export type Paint = (spot: Spot) => Rgb;
/** `outline` is convex and clockwise; `fray`: how far its edge strays, in inches. */
export type ScenePiece = { readonly outline: readonly Spot[]; readonly paint: Paint; readonly fray?: number };
export type Rendered = { readonly width: number; readonly height: number; readonly rgba: Uint8Array };

/** The camera's axes in the floor's: right, down and ahead. */
export function axesOf({ tilt, towards }: Scene): readonly (readonly [number, number, number])[] {
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

export function floorUnder(scene: Scene): (pixel: Spot) => Spot {
  const [right, down, ahead] = axesOf(scene);
  if (!right || !down || !ahead) throw new Error("a camera has three axes");
  const { width, height, focal, k1, far, looksAt } = scene;
  const eye = [looksAt[0] - far * ahead[0], looksAt[1] - far * ahead[1], -far * ahead[2]] as const;
  // Where a lens bends much the steps become small.
  const rounds = Math.abs(k1) > 0.1 ? 80 : 8;
  return (pixel) => {
    const bentX = (pixel[0] - (width - 1) / 2) / focal;
    const bentY = (pixel[1] - (height - 1) / 2) / focal;
    let u = bentX;
    let v = bentY;
    for (let round = 0; round < rounds; round += 1) {
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

export function scaled([r, g, b]: Rgb, by: number): Rgb {
  return [r * by, g * by, b * by];
}
