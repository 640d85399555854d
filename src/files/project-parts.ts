import * as v from "valibot";
import { styles } from "../engine/back/index.ts";
import {
  amounts,
  contrasts,
  directions,
  grains,
  keeps,
  kinds,
  methods,
  times,
  uses,
  wishesAsked,
} from "../engine/cloth/index.ts";
import { displayUnits } from "../engine/length/index.ts";
import type { Column } from "./leftovers-columns.ts";
import {
  areaMeasure,
  type Codec,
  count,
  type Decoded,
  type Json,
  lengthMeasure,
  longestText,
  moment,
  oneOf,
  orNull,
  text,
  three,
  usually,
  weightMeasure,
  whole,
  written,
  yesOrNo,
} from "./project-codecs.ts";
import type {
  Cells,
  ChangedPlan,
  KeptPlan,
  Project,
  RoughStock,
  StayingCells,
  TopPhoto,
} from "./project-types.ts";

/** Photos of leftovers that can be kept with one project. */
export const mostPhotos = 24;

export const mostOf = {
  rows: 20_000,
  rough: 200,
  ticks: 20_000,
  others: 100,
  colours: 8,
  photos: mostPhotos,
  parts: 20_000,
  depth: 500,
  stays: 2_000,
} as const;

const measure = orNull(lengthMeasure);
const plainText = text(longestText.cell);

/** The plan she kept, its text with it. */
const keptPlan: Codec<KeptPlan> = {
  schema: v.object({
    text: text(longestText.plan).schema,
    job: text(100).schema,
    style: oneOf(styles).schema,
    seed: count.schema,
    effort: count.schema,
    keptAt: moment.schema,
  }),
  write: (plan) => ({ ...plan, keptAt: moment.write(plan.keptAt) }),
};

const listOf = <T extends Json>({ schema }: Codec<T>, most: number): Codec<readonly T[]> => ({
  schema: v.pipe(v.array(schema), v.maxLength(most)),
  write: (list) => list,
});

const cells = listOf(text(longestText.cell), mostOf.stays);
const stayingCells: Codec<StayingCells> = {
  schema: v.object({ plan: text(longestText.plan).schema, cells: cells.schema }),
  write: ({ plan, cells }) => ({ plan, cells: [...cells] }),
};

const changedPlan: Codec<ChangedPlan> = {
  schema: v.object({ plan: text(longestText.plan).schema, job: text(100).schema }),
  write: ({ plan, job }) => ({ plan, job }),
};

export const pictureId = /^[0-9a-f]{64}$/;
export const pictureCodec: Codec<string> = {
  schema: v.pipe(v.string(), v.regex(pictureId)),
  write: (id) => id,
};

const topPhoto: Codec<TopPhoto> = {
  schema: v.object({
    picture: pictureCodec.schema,
    colours: v.pipe(
      v.array(
        v.object({
          colour: v.pipe(v.string(), v.regex(/^#[0-9a-f]{6}$/)),
          share: v.pipe(v.number(), v.minValue(0), v.maxValue(1)),
        }),
      ),
      v.maxLength(mostOf.colours),
    ),
  }),
  write: ({ picture, colours }) => ({ picture, colours: [...colours] }),
};

/** Everything that is one value: two tabs that change different ones both keep their change. */
export const factCodecs = {
  title: text(longestText.title),
  createdAt: moment,
  sample: yesOrNo,
  "settings.unit": oneOf(displayUnits),
  "settings.step": measure,
  "settings.seam": measure,
  "settings.plainSeam": measure,
  "settings.floor": measure,
  "settings.clothWidth": measure,
  "size.from": oneOf(["top", "back"]),
  "size.topWidths": three(measure),
  "size.topHeights": three(measure),
  "size.method": oneOf(methods),
  "size.extra": measure,
  "size.asksExtra": measure,
  "size.asksWidth": measure,
  "size.asksHeight": measure,
  "size.backWidth": measure,
  "size.backHeight": measure,
  topPhoto: usually(orNull(topPhoto), null),
  photos: usually(listOf(pictureCodec, mostOf.photos), []),
  time: oneOf(times),
  "plain.name": plainText,
  "plain.colour": plainText,
  "heap.cutting": oneOf(["clean", "rough"]),
  "heap.reserveBinding": yesOrNo,
  "heap.reserveLabel": yesOrNo,
  "heap.shelved": usually(orNull(moment), null),
  "wishes.style": orNull(oneOf(styles)),
  "wishes.seed": whole(0, 2 ** 32),
  "wishes.amount": usually(oneOf(amounts), "usual"),
  "wishes.asked": usually(listOf(oneOf(wishesAsked), wishesAsked.length), []),
  "wishes.contrast": usually(orNull(oneOf(contrasts)), null),
  "wishes.stays": usually(orNull(stayingCells), null),
  "wishes.byHand": usually(orNull(changedPlan), null),
  plan: orNull(keptPlan),
} as const;
export type FactName = keyof typeof factCodecs;
export type Facts = { readonly [F in FactName]: Decoded<(typeof factCodecs)[F]> };
export const factNames = Object.keys(factCodecs).filter(isFactName);

export function isFactName(name: string): name is FactName {
  return Object.hasOwn(factCodecs, name);
}

export const cellCodecs: { readonly [C in Column]: Codec<Cells[C]> } = {
  kind: written(oneOf(kinds)),
  width: lengthMeasure,
  height: lengthMeasure,
  count: written(count),
  fabric: written(plainText),
  colour: written(plainText),
  name: written(plainText),
  keep: written(oneOf(keeps)),
  use: written(oneOf(uses)),
  direction: written(oneOf(directions)),
  grain: written(oneOf(grains)),
  washed: written(yesOrNo),
  cloth: written(plainText),
  area: areaMeasure,
  weight: weightMeasure,
};

export const lineCodec = text(longestText.line);

/** Columns of hers: heading and cell, in pairs, since a heading may be any word. */
export const othersCodec: Codec<Readonly<Record<string, string>>> = {
  schema: v.pipe(
    v.array(v.strictTuple([plainText.schema, text(longestText.other).schema])),
    v.maxLength(mostOf.others),
    v.transform((pairs) => Object.fromEntries(pairs)),
  ),
  write: (others) => Object.entries(others),
};

export const idCodec: Codec<string> = {
  schema: v.pipe(v.string(), v.minLength(1), v.maxLength(100)),
  write: (id) => id,
};

const stockFacts = { id: idCodec.schema, fabric: plainText.schema, colour: plainText.schema };

export const roughCodec: Codec<RoughStock> = {
  schema: v.variant("kind", [
    v.object({
      ...stockFacts,
      kind: v.literal("strips"),
      width: lengthMeasure.schema,
      total: lengthMeasure.schema,
    }),
    v.object({ ...stockFacts, kind: v.literal("bag"), weight: weightMeasure.schema }),
  ]),
  write: ({ id, fabric, colour, ...stock }) => {
    const { kind } = stock;
    if (kind === "bag") return { id, kind, fabric, colour, weight: weightMeasure.write(stock.weight) };
    const { width, total } = stock;
    return { id, kind, fabric, colour, width: lengthMeasure.write(width), total: lengthMeasure.write(total) };
  },
};

export function factsOf(project: Project): Facts {
  const { settings, size, plain, heap, wishes } = project;
  return {
    title: project.title,
    createdAt: project.createdAt,
    sample: project.sample,
    "settings.unit": settings.unit,
    "settings.step": settings.step,
    "settings.seam": settings.seam,
    "settings.plainSeam": settings.plainSeam,
    "settings.floor": settings.floor,
    "settings.clothWidth": settings.clothWidth,
    "size.from": size.from,
    "size.topWidths": size.topWidths,
    "size.topHeights": size.topHeights,
    "size.method": size.method,
    "size.extra": size.extra,
    "size.asksExtra": size.asksExtra,
    "size.asksWidth": size.asksWidth,
    "size.asksHeight": size.asksHeight,
    "size.backWidth": size.backWidth,
    "size.backHeight": size.backHeight,
    topPhoto: project.topPhoto,
    photos: project.photos,
    time: project.time,
    "plain.name": plain.name,
    "plain.colour": plain.colour,
    "heap.cutting": heap.cutting,
    "heap.reserveBinding": heap.reserveBinding,
    "heap.reserveLabel": heap.reserveLabel,
    "heap.shelved": heap.shelved,
    "wishes.style": wishes.style,
    "wishes.seed": wishes.seed,
    "wishes.amount": wishes.amount,
    "wishes.asked": wishes.asked,
    "wishes.contrast": wishes.contrast,
    "wishes.stays": wishes.stays,
    "wishes.byHand": wishes.byHand,
    plan: project.plan,
  };
}

export function projectOf(
  facts: Facts,
  lists: Pick<Project, "leftovers" | "rough" | "ticked">,
  before?: Project,
): Project {
  const project: Project = {
    title: facts.title,
    createdAt: facts.createdAt,
    sample: facts.sample,
    settings: {
      unit: facts["settings.unit"],
      step: facts["settings.step"],
      seam: facts["settings.seam"],
      plainSeam: facts["settings.plainSeam"],
      floor: facts["settings.floor"],
      clothWidth: facts["settings.clothWidth"],
    },
    size: {
      from: facts["size.from"],
      topWidths: facts["size.topWidths"],
      topHeights: facts["size.topHeights"],
      method: facts["size.method"],
      extra: facts["size.extra"],
      asksExtra: facts["size.asksExtra"],
      asksWidth: facts["size.asksWidth"],
      asksHeight: facts["size.asksHeight"],
      backWidth: facts["size.backWidth"],
      backHeight: facts["size.backHeight"],
    },
    topPhoto: facts.topPhoto,
    photos: facts.photos,
    time: facts.time,
    plain: { name: facts["plain.name"], colour: facts["plain.colour"] },
    heap: {
      cutting: facts["heap.cutting"],
      reserveBinding: facts["heap.reserveBinding"],
      reserveLabel: facts["heap.reserveLabel"],
      shelved: facts["heap.shelved"],
    },
    ...lists,
    wishes: {
      style: facts["wishes.style"],
      seed: facts["wishes.seed"],
      amount: facts["wishes.amount"],
      asked: facts["wishes.asked"],
      contrast: facts["wishes.contrast"],
      stays: facts["wishes.stays"],
      byHand: facts["wishes.byHand"],
    },
    plan: facts.plan,
  };
  return before === undefined ? project : withSameParts(project, before);
}

/** A section in which nothing changed stays the same object, so that a screen of it rests. */
function withSameParts(project: Project, before: Project): Project {
  const same = <T extends object>(now: T, then: T): T => (isSameThroughout(now, then) ? then : now);
  return {
    ...project,
    settings: same(project.settings, before.settings),
    size: same(project.size, before.size),
    plain: same(project.plain, before.plain),
    heap: same(project.heap, before.heap),
    wishes: same(project.wishes, before.wishes),
  };
}

function isSameThroughout<T extends object>(now: T, then: T): boolean {
  const of = new Map(Object.entries(then));
  return Object.entries(now).every(([key, value]) => of.get(key) === value);
}
