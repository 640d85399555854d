import type { Place } from "./types.ts";

/**
 * A pinhole camera over the floor, its middle in the photo's middle, with radial distortion k1 (Brown 1966). The floor
 * is the plane z = 0 of the first card's own axes; `turn` is a rotation vector, `shift` in inches.
 */
export type Camera = {
  readonly focal: number;
  readonly k1: number;
  readonly turn: readonly [number, number, number];
  readonly shift: readonly [number, number, number];
  readonly middle: Place;
};

/** A rotation as three rows. */
export type Rotation = readonly (readonly [number, number, number])[];

/** Rodrigues' formula. */
export function rotationOf([x, y, z]: Camera["turn"]): Rotation {
  const angle = Math.hypot(x, y, z);
  const [sine, rest] =
    angle < 1e-9 ? [1, 0.5] : [Math.sin(angle) / angle, (1 - Math.cos(angle)) / angle ** 2];
  return [
    [1 - rest * (y * y + z * z), rest * x * y - sine * z, rest * x * z + sine * y],
    [rest * x * y + sine * z, 1 - rest * (x * x + z * z), rest * y * z - sine * x],
    [rest * x * z - sine * y, rest * y * z + sine * x, 1 - rest * (x * x + y * y)],
  ];
}

/** Both ways between floor and photo. */
export type Views = {
  /** Where a place on the floor, in inches, lies in the photo, in pixels. */
  readonly toPhoto: (place: Place) => Place;
  /** The other way; null for what is above the horizon. */
  readonly toFloor: (pixel: Place) => Place | null;
};

export function viewsOf({ focal, k1, turn, shift, middle }: Camera): Views {
  const rows = rotationOf(turn);
  const [a, b, c] = [rows[0], rows[1], rows[2]];
  if (!a || !b || !c) throw new Error("a rotation has three rows");
  const toPhoto = ([x, y]: Place): Place => {
    const depth = c[0] * x + c[1] * y + shift[2];
    const [u, v] = [(a[0] * x + a[1] * y + shift[0]) / depth, (b[0] * x + b[1] * y + shift[1]) / depth];
    const stretch = focal * (1 + k1 * (u * u + v * v));
    return [middle[0] + stretch * u, middle[1] + stretch * v];
  };
  const toFloor = ([column, row]: Place): Place | null => {
    const [u, v] = straightened([(column - middle[0]) / focal, (row - middle[1]) / focal], k1);
    // (u, v, 1) · depth = x · first column + y · second column + shift.
    const [p, q] = [a[0] - u * c[0], a[1] - u * c[1]];
    const [r, s] = [b[0] - v * c[0], b[1] - v * c[1]];
    const [e, f] = [u * shift[2] - shift[0], v * shift[2] - shift[1]];
    const turnOf = p * s - q * r;
    const [x, y] = [(e * s - q * f) / turnOf, (p * f - e * r) / turnOf];
    return c[0] * x + c[1] * y + shift[2] > 0 ? [x, y] : null;
  };
  return { toPhoto, toFloor };
}

/** Undoes the distortion by Newton's steps along the radius. */
function straightened([x, y]: Place, k1: number): Place {
  const bent = Math.hypot(x, y);
  let radius = bent;
  for (let round = 0; round < 8; round += 1)
    radius -= (radius * (1 + k1 * radius * radius) - bent) / Math.max(0.2, 1 + 3 * k1 * radius * radius);
  const scale = bent === 0 ? 1 : radius / bent;
  return [x * scale, y * scale];
}
