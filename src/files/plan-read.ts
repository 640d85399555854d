import { styles } from "../engine/back/index.ts";
import { directions, keeps, kinds, methods, uses } from "../engine/cloth/index.ts";
import { clothRoles, joinDirections, mostCells } from "../engine/layout/index.ts";
import {
  displayUnits,
  err,
  inches,
  type Length,
  ok,
  type Result,
  type Size,
} from "../engine/length/index.ts";
import type { Figures } from "../engine/plan/index.ts";
import { presses, type Step, type StepPart, stepKinds } from "../engine/sewing/index.ts";
import { type BuyRow, buyUses } from "../engine/supplies/index.ts";
import {
  type DocumentFabric,
  type DocumentPiece,
  type DocumentTop,
  type PlanDocument,
  planFormat,
  planVersion,
} from "./plan-document.ts";
import {
  area,
  cutSize,
  finishedSize,
  flag,
  isObject,
  list,
  may,
  must,
  name,
  named,
  number,
  oneOf,
  orNull,
  type Place,
  peek,
  type Reader,
  record,
  report,
  size,
  sizeOrNothing,
  sumOfLengths,
  text,
  under,
  whole,
} from "./plan-json.ts";
import { layoutNode, leftLong, most, quarters, source, taken } from "./plan-layout.ts";
import type { PlanProblem } from "./plan-problems.ts";

/** In characters. The largest real plan is a tenth of it. */
export const largestPlanFile = 20_000_000;
const mostPlans = 50;

/**
 * Reads one plan. Lengths are rounded to 1/320 mm and refused where they are more than a millionth of the unit off;
 * fields we do not know are passed over. Every fault is named with its place (up to a hundred). Never throws.
 */
export function readPlan(file: string): Result<PlanDocument, PlanProblem[]> {
  return parsed(file, plan);
}

/** Reads a file of one plan or of a list of plans, as the command line writes it. */
export function readPlans(file: string): Result<readonly PlanDocument[], PlanProblem[]> {
  return parsed(file, (value, place) => {
    if (Array.isArray(value)) return list(plan, mostPlans)(value, place);
    const one = plan(value, place);
    return one && [one];
  });
}

function parsed<T>(file: string, read: Reader<T>): Result<T, PlanProblem[]> {
  if (file.length > largestPlanFile) {
    return err([{ path: "", kind: "file-too-large", most: largestPlanFile }]);
  }
  const json = parseJson(file);
  if (!json.ok) return err([{ path: "", kind: "not-json" }]);
  const problems: PlanProblem[] = [];
  const value = read(json.value, { path: "", depth: 0, reading: { unit: "in", problems } });
  return value === undefined || problems.length > 0 ? err(problems) : ok(value);
}

function parseJson(file: string): Result<unknown, null> {
  try {
    // A byte order mark is no part of JSON, but editors put one there.
    return ok(JSON.parse(file.replace(/^\uFEFF/, "")));
  } catch {
    return err(null);
  }
}

/** What must be known first: that it is ours, of a version we know, and in which unit its numbers are. */
const plan: Reader<PlanDocument> = (value, place) => {
  if (!isObject(value)) return report(place, { kind: "not-a-plan" });
  if (!isOurs(value, place)) return undefined;
  const unit = peek(value, "unit", oneOf(displayUnits), place);
  if (unit === undefined) return undefined;
  const inUnit = { ...place, reading: { ...place.reading, unit } };
  const head = seamsOf(value, inUnit);
  return document(value, inUnit, head);
};

function isOurs(value: object, place: Place): boolean {
  const { format, version } = { format: undefined, version: undefined, ...value };
  if (format !== planFormat) {
    report(place, { kind: "not-a-plan" });
    return false;
  }
  if (typeof version === "number" && version > planVersion) {
    report(under(place, "version"), { kind: "newer-version", version, known: planVersion });
    return false;
  }
  return peek(value, "version", oneOf([planVersion]), place) !== undefined;
}

type Head = { readonly seam: Length; readonly plainSeam: Length };

// Joins may leave their seam out. Where the plan's own seams can't be read, that is told with the other fields.
function seamsOf(value: object, place: Place): Head {
  const quiet = { ...place, reading: { ...place.reading, problems: [] } };
  return {
    seam: peek(value, "seam", size, quiet) ?? inches(1, 4),
    plainSeam: peek(value, "plainSeam", size, quiet) ?? inches(1, 2),
  };
}

const anySize: { readonly [K in keyof Size]: ReturnType<typeof must<Length>> } = {
  width: must(size),
  height: must(size),
};

const top = record<DocumentTop>({ ...anySize, extra: must(sizeOrNothing), method: may(oneOf(methods)) });

const fabric = record<DocumentFabric>({ id: must(name), name: must(text(1_000)), colour: must(text(200)) });

type Crumbs = DocumentPiece & { readonly kind: "crumbs" };
type Sized = Exclude<DocumentPiece, Crumbs>;

const pieceFacts = {
  id: must(name),
  count: must(whole(1, most)),
  fabric: must(name),
  keep: must(oneOf(keeps)),
  use: must(oneOf(uses)),
  direction: must(oneOf(directions)),
  name: must(text(1_000)),
};

const crumbs = record<Crumbs>({ kind: must(oneOf(["crumbs"])), ...pieceFacts, area: must(area) });

const sizedKinds = kinds.filter((kind) => kind !== "crumbs");
const sized = record<Sized>({
  kind: must(oneOf(sizedKinds)),
  ...pieceFacts,
  width: must(cutSize),
  height: must(cutSize),
});

const piece: Reader<DocumentPiece> = (value, place) => {
  if (!isObject(value)) return report(place, { kind: "wrong-type", expected: "object" });
  const kind = peek(value, "kind", oneOf(kinds), place);
  if (kind === undefined) return undefined;
  return kind === "crumbs" ? crumbs(value, place) : sized(value, place);
};

const laid = {
  count: must(whole(1, most)),
  width: must(cutSize),
  height: must(cutSize),
  leftLong: may(leftLong),
};

type PartOf<K extends string> = Extract<StepPart, { readonly [key in K]: string }>;

const pieceOfStep = record<PartOf<"piece">>({
  piece: must(name),
  copy: may(whole(1, most)),
  turned: may(flag),
  quarter: may(oneOf(quarters)),
  ...laid,
});

const madeBefore = record<PartOf<"step">>({ step: must(name), ...laid });

const clothOfStep = record<PartOf<"cloth">>({
  cloth: must(name),
  source: must(source),
  role: must(oneOf(clothRoles)),
  ...laid,
});

const partReaders: readonly (readonly [key: string, read: Reader<StepPart>])[] = [
  ["piece", pieceOfStep],
  ["step", madeBefore],
  ["cloth", clothOfStep],
];

const stepPart: Reader<StepPart> = (value, place) => {
  if (!isObject(value)) return report(place, { kind: "wrong-type", expected: "object" });
  const [reader, another] = partReaders.filter(([key]) => Object.hasOwn(value, key));
  if (reader === undefined || another !== undefined) return report(place, { kind: "not-one-source" });
  return reader[1](value, place);
};

const step = record<Step>({
  id: must(name),
  kind: must(oneOf(stepKinds)),
  direction: must(oneOf(joinDirections)),
  from: must(list(stepPart, mostCells)),
  seam: must(sizeOrNothing),
  press: must(oneOf(presses)),
  unfinished: must(record({ width: must(cutSize), height: must(cutSize) })),
  finished: must(record({ width: must(finishedSize), height: must(finishedSize) })),
  leftLong: may(leftLong),
  squareUp: may(record({ width: must(cutSize), height: must(cutSize) })),
  pattern: may(name),
});

const buyRow = record<BuyRow>({
  use: must(oneOf(buyUses)),
  fabric: must(name),
  width: must(size),
  length: must(size),
});

const minutes: Reader<Figures["minutes"]> = (value, place) => {
  const read = list(number(0, 1e6), 2)(value, place);
  if (read === undefined) return undefined;
  const [low, high] = read;
  return low === undefined || high === undefined ? report(place, { kind: "missing" }) : [low, high];
};

const figures = record<Figures>({
  covered: must(number(0, 1_000)),
  plain: must(area),
  plainCells: must(whole(0)),
  trimWaste: must(number(0, 1_000)),
  joins: must(whole(0)),
  cuts: must(whole(0)),
  seamLength: must(sumOfLengths),
  contrast: must(orNull(number(0, 1_000))),
  minutes: must(minutes),
});

function document(value: object, place: Place, head: Head): PlanDocument | undefined {
  const read = record<Omit<PlanDocument, "floor"> & { readonly floor?: Length }>({
    unit: must(oneOf(displayUnits)),
    step: must(size),
    seam: must(size),
    plainSeam: must(size),
    floor: may(sizeOrNothing),
    top: must(orNull(top)),
    back: must(record<Size>(anySize)),
    style: must(oneOf(styles)),
    seed: must(whole(0)),
    effort: must(number(0, Number.MAX_SAFE_INTEGER)),
    byHand: may(flag),
    fabrics: must(named(fabric, most)),
    pieces: must(named(piece, most)),
    layout: must(layoutNode(head)),
    unused: must(list(taken, most)),
    steps: must(named(step, mostCells)),
    buy: must(list(buyRow, 1_000)),
    figures: must(figures),
  })(value, place);
  // 2 1/2 in was the floor before plans told it.
  return read && { floor: inches(5, 2), ...read };
}
