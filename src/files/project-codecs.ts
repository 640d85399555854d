import * as v from "valibot";
import {
  type Area,
  areaOf,
  type DisplayUnit,
  displayUnits,
  fromNumber,
  type Length,
  longestLength,
  toNumber,
  unitsIn,
} from "../engine/length/index.ts";
import type { Measured, Written } from "./project-types.ts";

export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

/** How one part of a project stands in a file. Law: what is written is read back the same. */
export type Codec<T> = {
  readonly schema: v.GenericSchema<unknown, T>;
  readonly write: (value: T) => Json;
};
export type Decoded<C> = C extends Codec<infer T> ? T : never;

/** In characters. What is longer was never typed. */
export const longestText = { title: 200, cell: 500, line: 2_000, other: 2_000, plan: 20_000_000 } as const;

/** Text that every encoding holds: half a letter becomes the sign for it. */
export function wellFormed(text: string): string {
  return text.replace(/\p{Surrogate}/gu, "\ufffd");
}

export function text(most: number): Codec<string> {
  return { schema: v.pipe(v.string(), v.maxLength(most), v.transform(wellFormed)), write: (value) => value };
}

export const yesOrNo: Codec<boolean> = { schema: v.boolean(), write: (value) => value };

export function oneOf<T extends string>(words: readonly T[]): Codec<T> {
  return { schema: v.picklist(words), write: (value) => value };
}

export function whole(least: number, most: number): Codec<number> {
  return {
    schema: v.pipe(v.number(), v.integer(), v.minValue(least), v.maxValue(most)),
    write: (value) => value,
  };
}

/** Milliseconds since 1970; in a file as ISO 8601 in UTC, so that people can read it. */
export const moment: Codec<number> = {
  schema: v.pipe(
    v.string(),
    v.maxLength(40),
    v.transform((written) => Date.parse(written)),
    v.number(),
    v.integer(),
    v.minValue(0),
    v.maxValue(latestMoment()),
  ),
  write: (value) => new Date(value).toISOString(),
};

function latestMoment(): number {
  return Date.UTC(9999, 0);
}

export function orNull<T>({ schema, write }: Codec<T>): Codec<T | null> {
  return { schema: v.nullable(schema), write: (value) => (value === null ? null : write(value)) };
}

/** For what earlier projects do not have: they mean `value`. */
export function usually<T>({ schema, write }: Codec<T>, value: T): Codec<T> {
  return {
    schema: v.pipe(
      v.optional(v.unknown(), () => write(value)),
      schema,
    ),
    write,
  };
}

export function three<T>({ schema, write }: Codec<T>): Codec<readonly [T, T, T]> {
  return {
    schema: v.strictTuple([schema, schema, schema]),
    write: ([one, middle, other]) => [write(one), write(middle), write(other)],
  };
}

/** A text and what was read from it. */
export function written<T>(codec: Codec<T>): Codec<Written<T>> {
  const value = orNull(codec);
  return {
    schema: v.object({ text: text(longestText.cell).schema, value: value.schema }),
    write: (cell) => ({ text: cell.text, value: value.write(cell.value) }),
  };
}

type InUnit<T> = {
  readonly read: (value: number, unit: DisplayUnit) => T | null;
  readonly write: (value: T, unit: DisplayUnit) => number;
};

/** A measure: its number stands in its own unit, unrounded. */
function measured<T>({ read, write }: InUnit<T>): Codec<Measured<T>> {
  return {
    schema: v.pipe(
      v.object({
        text: text(longestText.cell).schema,
        unit: v.picklist(displayUnits),
        value: v.nullable(v.pipe(v.number(), v.finite())),
      }),
      v.rawTransform(({ dataset: { value: measure }, addIssue, NEVER }): Measured<T> => {
        if (measure.value === null) return { ...measure, value: null };
        const value = read(measure.value, measure.unit);
        if (value !== null) return { ...measure, value };
        addIssue({ message: notALength, input: measure.value });
        return NEVER;
      }),
    ),
    write: ({ text, unit, value }) => ({ text, unit, value: value === null ? null : write(value, unit) }),
  };
}

/** Marks an issue that is told apart by its own word. */
export const notALength = "not-a-length";

export const lengthMeasure: Codec<Measured<Length>> = measured({
  read: (value, unit) => {
    const size = fromNumber(value, unit);
    return size !== null && size >= 0 && size <= longestLength ? size : null;
  },
  write: toNumber,
});

export const areaMeasure: Codec<Measured<Area>> = measured({
  read: (value, unit) => {
    const whole = Math.round(value * unitsIn(unit) ** 2);
    return whole >= 0 && whole <= longestLength ** 2 ? areaOf(whole) : null;
  },
  write: (value, unit) => value / unitsIn(unit) ** 2,
});

const heaviestGrams = 1_000_000;

/** In grams, whatever the unit. */
export const weightMeasure: Codec<Measured<number>> = measured({
  read: (value) => (value >= 0 && value <= heaviestGrams ? value : null),
  write: (value) => value,
});

/** Any number that was typed; whether so many make sense is asked later. */
export const count: Codec<number> = { schema: v.pipe(v.number(), v.finite()), write: (value) => value };
