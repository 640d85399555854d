import { unitsPerCentimetre, unitsPerInch, unitsPerMillimetre } from "./types.ts";

/** A unit people write: how many base units it is, exactly `over / under`. */
export type WrittenUnit = {
  readonly names: readonly string[];
  readonly over: bigint;
  readonly under: bigint;
  readonly metric: boolean;
};

const inch = BigInt(unitsPerInch);
const millimetre = BigInt(unitsPerMillimetre);
const centimetre = BigInt(unitsPerCentimetre);

function unit(names: string, over: bigint, metric = false): WrittenUnit {
  return { names: names.split(" "), over, under: 1n, metric };
}

/** In 1/320 mm. */
export const lengthUnits: readonly WrittenUnit[] = [
  unit(`in inch inches zoll "`, inch),
  unit("ft foot feet fuß '", 12n * inch),
  unit("yd yds yard yards", 36n * inch),
  unit("mm millimetre millimetres millimeter millimeters", millimetre, true),
  unit("cm centimetre centimetres centimeter centimeters zentimeter", centimetre, true),
  unit("m metre metres meter meters", 100n * centimetre, true),
];

/** In (1/320 mm)². */
export const areaUnits: readonly WrittenUnit[] = lengthUnits.map((side) => ({
  ...side,
  names: side.names.filter((name) => /\p{L}/u.test(name)).flatMap(squared),
  over: side.over * side.over,
}));

function squared(name: string): string[] {
  return [`sq ${name}`, `sq. ${name}`, `sq${name}`, `square ${name}`, `q${name}`, `quadrat${name}`].concat([
    `${name}²`,
    `${name}2`,
    `${name}^2`,
  ]);
}

const gramsIn = (names: string, over: bigint, under: bigint, metric: boolean): WrittenUnit => ({
  names: names.split(" "),
  over,
  under,
  metric,
});

/** In grams. The pound is 453.59237 g by definition, the ounce a sixteenth of it. */
export const weightUnits: readonly WrittenUnit[] = [
  gramsIn("g gr gram grams gramme grammes gramm", 1n, 1n, true),
  gramsIn("kg kilo kilos kilogram kilograms kilogramm", 1000n, 1n, true),
  gramsIn("oz ounce ounces unze unzen", 28_349_523_125n, 1_000_000_000n, false),
  gramsIn("lb lbs pound pounds", 45_359_237n, 100_000n, false),
];
