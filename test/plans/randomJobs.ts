import fc from "fast-check";
import { backFor, extraFor, type Style, styles } from "../../src/engine/back/index.ts";
import {
  checkDraft,
  type Draft,
  type DraftPiece,
  directions,
  type Job,
  keeps,
  kinds,
  methods,
  times,
  uses,
} from "../../src/engine/cloth/index.ts";
import {
  areaOf,
  displayUnits,
  inches,
  type Length,
  length,
  millimetres,
} from "../../src/engine/length/index.ts";

/** A job and the style it is to be planned in. */
export type Case = { readonly job: Job; readonly style: Style; readonly seed: number };

/** Heaps of up to 14 rows of every kind, on backs from a cushion's size to a large bed's, in every style. */
export const randomCases: fc.Arbitrary<Case> = fc
  .record({
    draft: draftsOf({ minLength: 1, maxLength: 14 }),
    style: anyStyle(),
    seed: fc.integer({ min: 1, max: 4 }),
  })
  .map(({ draft, ...request }) => ({ checked: checkDraft(draft), ...request }))
  .filter(({ checked }) => checked.ok)
  .map(({ checked, ...request }) => {
    if (!checked.ok) throw new Error("a refused draft was let through");
    return { job: checked.value.job, ...request };
  });

function anyStyle(): fc.Arbitrary<Style> {
  return fc.constantFrom(...styles);
}

function draftsOf(rows: { minLength: number; maxLength: number }): fc.Arbitrary<Draft> {
  return fc
    .record({
      unit: fc.constantFrom(...displayUnits),
      size: sizes(),
      time: fc.constantFrom(...times),
      // 0: she wants every bit placed.
      floor: fc.constantFrom(null, inches(0), inches(3, 2), inches(5, 2), inches(4)),
      step: fc.constantFrom(null, inches(1, 8), inches(1, 16), inches(1, 4), millimetres(1)),
      rows: fc.array(piece(), rows),
    })
    .map(({ unit, size, floor, step, rows, ...rest }) => ({
      unit,
      ...size(unit),
      ...(floor === null ? {} : { floor }),
      ...(step === null ? {} : { step }),
      ...rest,
      plain: { name: "Unbleached cotton" },
      pieces: rows.map((row, index) => ({ ...row, row: index + 1 })),
    }));
}

type SizeIn = (unit: Draft["unit"]) => Pick<Draft, "top" | "back">;

/** The back alone or a top and a method; square, long and thin, as small as a cushion. */
function sizes(): fc.Arbitrary<SizeIn> {
  const side = fc.integer({ min: 12, max: 110 });
  const thin = fc.tuple(fc.integer({ min: 12, max: 16 }), fc.integer({ min: 80, max: 300 }));
  const both = fc.oneof(fc.constant([12, 12] as const), thin, fc.tuple(side, side), fc.tuple(side, side));
  return fc.tuple(both, fc.constantFrom(null, ...methods), fc.boolean()).map(([[a, b], method, wide]) => {
    const size = wide ? { width: inches(b), height: inches(a) } : { width: inches(a), height: inches(b) };
    if (method === null) return () => ({ back: size });
    return (unit) => {
      const extra = extraFor(method, unit);
      return { top: { ...size, method, extra }, back: backFor(size, extra) };
    };
  });
}

function piece(): fc.Arbitrary<Omit<DraftPiece, "row">> {
  return fc
    .record({
      kind: fc.constantFrom(...kinds),
      sides: fc.oneof(twoSides(inches(1, 8)), twoSides(inches(1, 16)), twoSides(millimetres(1))),
      equal: fc.boolean(),
      count: fc.integer({ min: 1, max: 9 }),
      fabric: fc.constantFrom("moss", "slate", "oat", "rust"),
      keep: fc.constantFrom(null, null, ...keeps),
      use: fc.constantFrom("yes" as const, "yes" as const, ...uses),
      direction: fc.constantFrom("none" as const, "none" as const, ...directions),
    })
    .map(shaped);
}

type Shape = {
  readonly kind: (typeof kinds)[number];
  readonly sides: readonly [Length, Length];
  readonly equal: boolean;
  readonly count: number;
  readonly fabric: string;
  readonly keep: (typeof keeps)[number] | null;
  readonly use: (typeof uses)[number];
  readonly direction: (typeof directions)[number];
};

const colours: Readonly<Record<string, string>> = { moss: "#435b42", slate: "#4a665e", oat: "#e5dcc3" };

/** Squares are square, lengths are large, crumbs have an area; whatever else she might write stays as it is. */
function shaped({ kind, sides: [a, b], equal, keep, ...facts }: Shape): Omit<DraftPiece, "row"> {
  const colour = colours[facts.fabric];
  const row = {
    kind,
    ...facts,
    ...(keep === null ? {} : { keep }),
    ...(colour === undefined ? {} : { colour }),
  };
  switch (kind) {
    case "crumbs":
      return { ...row, count: 1, area: areaOf(a * b) };
    case "square":
    case "half-square-triangle":
      return { ...row, width: a, height: a };
    case "length":
      return {
        ...row,
        count: Math.ceil(facts.count / 4),
        width: length(a + inches(18)),
        height: length(b * 3),
      };
    default:
      return { ...row, width: a, height: equal && kind !== "strip" ? a : b };
  }
}

/** Cut sizes from 1 to 60 in on the marks of a ruler, small ones oftener. */
function twoSides(step: Length): fc.Arbitrary<[Length, Length]> {
  const inch = inches(1) / step;
  const side = fc.oneof(
    fc.integer({ min: Math.ceil(inch), max: Math.floor(60 * inch) }),
    fc.integer({ min: Math.ceil(2 * inch), max: Math.floor(13 * inch) }),
  );
  return fc.tuple(side, side).map(([a, b]) => [length(a * step), length(b * step)]);
}

/** A scrap back: so many bits of all sizes, each a row of its own, that together cover about the whole. */
export function manyPieces(count: number): Draft {
  const shapes: DraftPiece["kind"][] = ["square", "strip", "rectangle"];
  const pieces = Array.from({ length: count }, (_, index): DraftPiece => {
    const width = inches(16 + ((index * 37) % 40), 8);
    const kind = shapes[index % shapes.length] ?? "square";
    const height = kind === "square" ? width : inches(24 + ((index * 53) % 120), 8);
    return { row: index + 1, kind, width, height, fabric: `Cloth ${index % 12}` };
  });
  const back = { width: inches(90), height: inches(100) };
  return { unit: "in", back, time: "any", floor: inches(3, 2), plain: { name: "Unbleached cotton" }, pieces };
}
