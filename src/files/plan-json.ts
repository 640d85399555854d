import {
  type Area,
  areaOf,
  type Cut,
  cut,
  type DisplayUnit,
  type Finished,
  finished,
  fromNumber,
  inches,
  type Length,
  length,
  toNumber,
  unitsIn,
} from "../engine/length/index.ts";
import type { PlanProblem, PlanValueType } from "./plan-problems.ts";

/** What reading one file needs to know and what it has found wrong so far. */
export type Reading = { readonly unit: DisplayUnit; readonly problems: PlanProblem[] };

/** Where a value stands: `path` is as problems name it, `depth` counts joins within joins. */
export type Place = { readonly path: string; readonly depth: number; readonly reading: Reading };

/** Reads one JSON value. `undefined`: it has a problem, which is reported already. Never throws. */
export type Reader<T> = (value: unknown, place: Place) => T | undefined;

/** A fault of the value at hand; where it stands is added when it is reported. */
export type Fault = PlanProblem extends infer P ? (P extends PlanProblem ? Omit<P, "path"> : never) : never;

/** More lines than anyone reads. */
export const mostProblems = 100;

export function report({ path, reading: { problems } }: Place, fault: Fault): undefined {
  if (problems.length < mostProblems) problems.push({ path, ...fault });
  else if (problems.length === mostProblems) problems.push({ path: "", kind: "more-problems" });
}

function wrongType(place: Place, expected: PlanValueType): undefined {
  return report(place, { kind: "wrong-type", expected });
}

export function under(place: Place, key: string | number): Place {
  const step = typeof key === "number" ? `[${key}]` : place.path === "" ? key : `.${key}`;
  return { ...place, path: `${place.path}${step}` };
}

// ---- Objects and lists

/** One field of an object: how it is read and whether it may be left out. */
export type Field<T> = { readonly read: Reader<T>; readonly mayBeAbsent: boolean };
export type Fields<T> = { readonly [K in keyof T]-?: Field<Exclude<T[K], undefined>> };

export function must<T>(read: Reader<T>): Field<T> {
  return { read, mayBeAbsent: false };
}

export function may<T>(read: Reader<T>): Field<T> {
  return { read, mayBeAbsent: true };
}

/** An object with these fields; others in it are passed over, so that a file may carry more than we know. */
export function record<T extends object>(fields: Fields<T>): Reader<T> {
  return (value, place) => {
    if (!isObject(value)) return wrongType(place, "object");
    const found: Partial<T> = {};
    let whole = true;
    for (const key in fields) {
      const read = readField(value, under(place, key), { key, field: fields[key] });
      if (read === undefined) whole = whole && fields[key].mayBeAbsent && !has(value, key);
      else found[key] = read;
    }
    return whole ? complete(found) : undefined;
  };
}

// Every field that must be there was read, which no type can follow.
function complete<T>(found: Partial<T>): T {
  return found as T;
}

function readField<T>(
  value: object,
  place: Place,
  { key, field }: { readonly key: string; readonly field: Field<T> },
): T | undefined {
  const own = has(value, key);
  if (own !== undefined) return field.read(own.value, place);
  return field.mayBeAbsent ? undefined : report(place, { kind: "missing" });
}

/** The object's own value under `key`, wrapped; `undefined` where it has none. */
function has(value: object, key: string): { readonly value: unknown } | undefined {
  const own = Object.getOwnPropertyDescriptor(value, key);
  return own && "value" in own ? { value: own.value } : undefined;
}

export function isObject(value: unknown): value is object {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** One field of an object, however it may read; for what must be known before the rest can be read. */
export function peek<T>(value: object, key: string, read: Reader<T>, place: Place): T | undefined {
  return readField(value, under(place, key), { key, field: must(read) });
}

export function list<T>(read: Reader<T>, most: number): Reader<readonly T[]> {
  return (value, place) => {
    if (!Array.isArray(value)) return wrongType(place, "list");
    if (value.length > most) return report(place, { kind: "too-many", most });
    const items = value.map((item: unknown, index) => read(item, under(place, index)));
    const found = items.filter((item) => item !== undefined);
    return found.length === value.length ? found : undefined;
  };
}

/** A list of things that have names, each name once. */
export function named<T extends { readonly id: string }>(
  read: Reader<T>,
  most: number,
): Reader<readonly T[]> {
  const all = list(read, most);
  return (value, place) => {
    const items = all(value, place);
    if (items === undefined) return undefined;
    const seen = new Set<string>();
    let once = true;
    for (const [index, { id }] of items.entries()) {
      if (seen.has(id)) {
        once = false;
        report(under(under(place, index), "id"), { kind: "twice", id });
      }
      seen.add(id);
    }
    return once ? items : undefined;
  };
}

export function orNull<T>(read: Reader<T>): Reader<T | null> {
  return (value, place) => (value === null ? null : read(value, place));
}

// ---- Single values

export function text(most: number): Reader<string> {
  return (value, place) => {
    if (typeof value !== "string") return wrongType(place, "text");
    return value.length <= most ? value : report(place, { kind: "text-too-long", most });
  };
}

/** A text that names something: at least one letter. */
export const name: Reader<string> = (value, place) => {
  const read = text(200)(value, place);
  return read === "" ? report(place, { kind: "missing" }) : read;
};

export function oneOf<const T extends string | number>(choices: readonly T[]): Reader<T> {
  return (value, place) => {
    const chosen = choices.find((choice) => choice === value);
    return chosen === undefined ? report(place, { kind: "not-one-of", choices }) : chosen;
  };
}

export const flag: Reader<boolean> = (value, place) =>
  typeof value === "boolean" ? value : wrongType(place, "yes-or-no");

export function number(least: number, most: number): Reader<number> {
  return (value, place) => {
    if (typeof value !== "number" || !Number.isFinite(value)) return wrongType(place, "number");
    if (value >= least && value <= most) return value;
    return report(place, { kind: "out-of-range", value, least, most });
  };
}

export function whole(least: number, most: number = Number.MAX_SAFE_INTEGER): Reader<number> {
  const inRange = number(least, most);
  return (value, place) =>
    typeof value === "number" && Number.isFinite(value) && !Number.isInteger(value)
      ? wrongType(place, "whole-number")
      : inRange(value, place);
}

// ---- Lengths: whole 1/320 mm, in the file's unit

/** Longer than any seam of any back; products of two of them are still exact. */
const longest = inches(10_000);
/** All the seams of a back together. */
const longestSum = length(longest * 1_000);

export function lengthBetween(least: Length, most: Length): Reader<Length> {
  return (value, place) => {
    const { unit } = place.reading;
    if (typeof value !== "number" || !Number.isFinite(value)) return wrongType(place, "number");
    const read = fromNumber(value, unit);
    if (read === null) return report(place, { kind: "not-a-length", value });
    if (read >= least && read <= most) return read;
    const [low, high] = [toNumber(least, unit), toNumber(most, unit)];
    return report(place, { kind: "out-of-range", value, least: low, most: high });
  };
}

/** More than nothing. */
export const size = lengthBetween(length(1), longest);
export const sizeOrNothing = lengthBetween(length(0), longest);
export const sumOfLengths = lengthBetween(length(0), longestSum);

export const finishedSize: Reader<Finished> = (value, place) => {
  const read = size(value, place);
  return read === undefined ? undefined : finished(read);
};

export const cutSize: Reader<Cut> = (value, place) => {
  const read = size(value, place);
  return read === undefined ? undefined : cut(read);
};

/** An area in the file's unit, squared, to the nearest whole (1/320 mm)². */
export const area: Reader<Area> = (value, place) => {
  const square = unitsIn(place.reading.unit) ** 2;
  const read = number(0, longest ** 2 / square)(value, place);
  return read === undefined ? undefined : areaOf(Math.round(read * square));
};
