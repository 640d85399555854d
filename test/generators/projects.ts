import fc from "fast-check";
import { styles } from "../../src/engine/back/index.ts";
import {
  amounts,
  wishesAsked as asked,
  contrasts,
  directions,
  grains,
  keeps,
  kinds,
  methods,
  times,
  uses,
} from "../../src/engine/cloth/index.ts";
import { areaOf, displayUnits, type Length, length } from "../../src/engine/length/index.ts";
import type {
  HeapFacts,
  KeptPlan,
  Leftover,
  Measured,
  NewLeftover,
  PlainCloth,
  Project,
  ProjectSettings,
  ProjectSize,
  RoughStock,
  ThreeMeasures,
  TopPhoto,
  Wishes,
  Written,
} from "../../src/files/index.ts";

/** What people and programs type: umlauts, emoji, marks of the format itself. */
export const texts = fc.string({ unit: "grapheme", maxLength: 12 });
const unit = fc.constantFrom(...displayUnits);
const lengths: fc.Arbitrary<Length> = fc.integer({ min: 0, max: 8128 * 400 }).map(length);

function measured<T>(value: fc.Arbitrary<T>): fc.Arbitrary<Measured<T>> {
  return fc
    .tuple(texts, unit, fc.option(value))
    .map(([text, inUnit, read]) => ({ text, unit: inUnit, value: read }));
}

function written<T>(value: fc.Arbitrary<T>): fc.Arbitrary<Written<T>> {
  return fc.tuple(texts, fc.option(value)).map(([text, read]) => ({ text, value: read }));
}

export const measures = fc.option(measured(lengths));
const three: fc.Arbitrary<ThreeMeasures> = fc.tuple(measures, measures, measures);

export const cells: fc.Arbitrary<Leftover["cells"]> = fc.record(
  {
    kind: written(fc.constantFrom(...kinds)),
    width: measured(lengths),
    height: measured(lengths),
    count: written(fc.integer({ min: -1, max: 100 })),
    fabric: written(texts),
    colour: written(texts),
    name: written(texts),
    keep: written(fc.constantFrom(...keeps)),
    use: written(fc.constantFrom(...uses)),
    direction: written(fc.constantFrom(...directions)),
    grain: written(fc.constantFrom(...grains)),
    washed: written(fc.boolean()),
    cloth: written(texts),
    area: measured(fc.integer({ min: 0, max: 1e12 }).map(areaOf)),
    weight: measured(fc.double({ min: 0, max: 1000, noNaN: true, noDefaultInfinity: true })),
  },
  { requiredKeys: [] },
);

const pictureIds = fc.constantFrom("a".repeat(64), "0f".repeat(32), "39c7".repeat(16));

export const newLeftovers: fc.Arbitrary<NewLeftover> = fc.record(
  {
    line: texts,
    cells,
    others: fc.dictionary(texts, texts, { maxKeys: 2 }),
    picture: pictureIds,
  },
  { requiredKeys: ["line", "cells", "others"] },
);

export const settings: fc.Arbitrary<ProjectSettings> = fc.record({
  unit,
  step: measures,
  seam: measures,
  plainSeam: measures,
  floor: measures,
  clothWidth: measures,
});

export const sizes: fc.Arbitrary<ProjectSize> = fc.record({
  from: fc.constantFrom("top", "back"),
  topWidths: three,
  topHeights: three,
  method: fc.constantFrom(...methods),
  extra: measures,
  asksExtra: measures,
  asksWidth: measures,
  asksHeight: measures,
  backWidth: measures,
  backHeight: measures,
});

export const topPhotos: fc.Arbitrary<TopPhoto> = fc.record({
  picture: pictureIds,
  colours: fc.array(
    fc.record({
      colour: fc.constantFrom("#102030", "#f4efe2", "#7a1f2b"),
      share: fc.double({ min: 0, max: 1, noNaN: true }).map((share) => share || 0),
    }),
    { maxLength: 6 },
  ),
});

export const plainCloths: fc.Arbitrary<PlainCloth> = fc.record({ name: texts, colour: texts });

export const heaps: fc.Arbitrary<HeapFacts> = fc.record({
  cutting: fc.constantFrom("clean", "rough"),
  reserveBinding: fc.boolean(),
  reserveLabel: fc.boolean(),
  shelved: fc.option(fc.nat(4_000_000_000_000), { nil: null }),
});

export const wishes: fc.Arbitrary<Wishes> = fc.record({
  style: fc.option(fc.constantFrom(...styles)),
  seed: fc.nat(1000),
  amount: fc.constantFrom(...amounts),
  asked: fc.subarray([...asked]),
  contrast: fc.option(fc.constantFrom(...contrasts)),
  stays: fc.option(fc.record({ plan: texts, cells: fc.array(texts, { maxLength: 4 }) })),
  byHand: fc.option(fc.record({ plan: texts, job: texts })),
});

export const keptPlans: fc.Arbitrary<KeptPlan> = fc.record({
  text: texts,
  job: texts,
  style: fc.constantFrom(...styles),
  seed: fc.nat(1000),
  effort: fc.nat(100_000),
  keptAt: fc.nat(4_000_000_000_000),
});

const stock = { fabric: texts, colour: texts };
export const newRough = fc.oneof(
  fc.record({
    kind: fc.constant("strips" as const),
    ...stock,
    width: measured(lengths),
    total: measured(lengths),
  }),
  fc.record({ kind: fc.constant("bag" as const), ...stock, weight: measured(fc.nat(5000)) }),
);

const stepIds = fc.stringMatching(/^[a-z0-9-]{1,8}$/);

/** Any project a store can hold; its kept plan's text is no plan. */
export const projects: fc.Arbitrary<Project> = fc
  .record({
    title: texts,
    createdAt: fc.nat(4_000_000_000_000),
    sample: fc.boolean(),
    settings,
    size: sizes,
    topPhoto: fc.option(topPhotos),
    photos: fc.array(pictureIds, { maxLength: 3 }),
    time: fc.constantFrom(...times),
    plain: plainCloths,
    heap: heaps,
    leftovers: fc.array(newLeftovers, { maxLength: 6 }),
    rough: fc.array(newRough, { maxLength: 3 }),
    wishes,
    plan: fc.option(keptPlans),
    ticked: fc.uniqueArray(stepIds, { maxLength: 4 }),
  })
  .map((project) => ({
    ...project,
    leftovers: project.leftovers.map((row, index) => ({ ...row, id: `row-${index}` })),
    rough: project.rough.map((one, index): RoughStock => ({ ...one, id: `rough-${index}` })),
    ticked: new Set(project.plan === null ? [] : project.ticked),
  }));
