import { areaOfWeight } from "../../../engine/cloth/index.ts";
import {
  type Area,
  type DisplayUnit,
  err,
  type LengthProblem,
  ok,
  parseLength,
  parseWeight,
  type Result,
} from "../../../engine/length/index.ts";
import { colourWordIn, type RoughStock } from "../../../files/index.ts";
import type { NewRoughStock } from "../../../store/index.ts";

export type StripsTyped = { readonly total: string; readonly width: string; readonly fabric: string };
export type BagTyped = { readonly weight: string; readonly fabric: string };

export type StripsProblem = { readonly field: "total" | "width"; readonly problem: LengthProblem };

/** About so much of strips of one width, as she typed it. */
export function stripsOf(typed: StripsTyped, unit: DisplayUnit): Result<NewRoughStock, StripsProblem> {
  const total = parseLength(typed.total, unit);
  if (!total.ok) return err({ field: "total", problem: total.error });
  const width = parseLength(typed.width, unit);
  if (!width.ok) return err({ field: "width", problem: width.error });
  return ok({
    kind: "strips",
    ...clothOf(typed.fabric),
    total: { text: typed.total.trim(), unit, value: total.value },
    width: { text: typed.width.trim(), unit, value: width.value },
  });
}

/** A bag by its weight. */
export function bagOf(typed: BagTyped, unit: DisplayUnit): Result<NewRoughStock, LengthProblem> {
  const weight = parseWeight(typed.weight);
  if (!weight.ok) return weight;
  const measured = { text: typed.weight.trim(), unit, value: weight.value };
  return ok({ kind: "bag", ...clothOf(typed.fabric), weight: measured });
}

function clothOf(typed: string): { readonly fabric: string; readonly colour: string } {
  const fabric = typed.trim();
  return { fabric, colour: colourWordIn(fabric) ?? "" };
}

/** How much cloth is in a bag; null: the stock is no bag. */
export function bagArea(stock: RoughStock): Area | null {
  if (stock.kind !== "bag" || stock.weight.value === null) return null;
  return areaOfWeight(stock.weight.value).likely;
}
