import type { Lab } from "../cloth/index.ts";
import type { Hue, Value } from "./types.ts";

/** A fabric that one could ask for in a shop. */
export type Candidate = { readonly value: Value; readonly hue: Hue; readonly lab: Lab };

/** L* of what a shop has on its light, medium and dark shelves. Common practice has no figures; ours. */
const lightness: readonly (readonly [Value, number])[] = [
  ["light", 85],
  ["medium", 55],
  ["dark", 25],
];

// Directions in the a* b* plane, of length 1; the angles are those of the usual colour names.
const directions: readonly (readonly [Hue, a: number, b: number])[] = [
  ["red", 0.8988, 0.4384],
  ["orange", 0.5, 0.866],
  ["yellow", 0.0872, 0.9962],
  ["green", -0.766, 0.6428],
  ["teal", -0.9397, -0.342],
  ["blue", 0, -1],
  ["violet", 0.6428, -0.766],
  ["pink", 0.9848, -0.1736],
];

/** Less colour than this reads as grey, or as off-white. */
const coloured = 12;
/** How strong the colour of a fabric is that one asks for by value and hue alone. */
const usual = 30;

export function chromaOf({ a, b }: Lab): number {
  return Math.sqrt(a * a + b * b);
}

export function hueOf(lab: Lab): Hue {
  if (chromaOf(lab) < coloured) return "grey";
  const along = ([, a, b]: (typeof directions)[number]) => lab.a * a + lab.b * b;
  return directions.reduce((best, next) => (along(next) > along(best) ? next : best))[0];
}

/** The hues of her own heap first, the most frequent one before others: of equals the one that belongs. */
export function candidatesFor(labs: readonly Lab[]): readonly Candidate[] {
  const own = labs.map(hueOf);
  const often = (hue: Hue) => own.filter((other) => other === hue).length;
  const all: readonly (readonly [Hue, number, number])[] = [["grey", 0, 0], ...directions];
  return all
    .toSorted(([one], [other]) => often(other) - often(one))
    .flatMap(([hue, a, b]) =>
      lightness.map(([value, l]): Candidate => ({ value, hue, lab: { l, a: a * usual, b: b * usual } })),
    );
}
