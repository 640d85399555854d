import { type Area, area, areaOf, inches } from "../length/index.ts";

/** Exact by definition of the ounce. */
export const gramsPerOunce = 28.349523125;

const squareInch = area(inches(1), inches(1));
/** Common practice: quilting cotton runs to about 300 sq in an ounce (1 m² weighs about 145 g), give or take a tenth. */
const areaPerOunce = 300 * squareInch;

/** Cloth known by its weight: a likely area and the two it lies between. */
export type WeighedArea = { readonly likely: Area; readonly least: Area; readonly most: Area };

/** How much quilting cotton `grams` are, ± 10 %. Rounded down to whole units, as all that is measured. */
export function areaOfWeight(grams: number): WeighedArea {
  const share = (tenths: number) =>
    areaOf(Math.floor(((grams / gramsPerOunce) * areaPerOunce * tenths) / 10));
  return { likely: share(10), least: share(9), most: share(11) };
}
