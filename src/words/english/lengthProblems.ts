import type { LengthProblem, SizeProblem } from "../../engine/length/index.ts";
import type { Measured } from "../types.ts";
import { quoted } from "../voice.ts";

const examples: { readonly [M in Measured]: string } = {
  size: "2 1/2, 2.5 or 63 mm",
  area: "120 sq in or 800 cm²",
  weight: "4 oz or 110 g",
};

const units: { readonly [M in Measured]: string } = {
  size: "in, ft, yd, mm, cm or m",
  area: "sq in, sq ft, sq yd, cm² or m²",
  weight: "oz, lb, g or kg",
};

/** What was written and why it is no size, area or weight. */
export function lengthProblem(problem: LengthProblem, measured: Measured = "size"): string {
  const text = quoted(problem.text);
  const example = examples[measured];
  switch (problem.kind) {
    case "empty":
      return `nothing is written here. Write it like ${example}.`;
    case "not-a-number":
      return `${text} does not read as ${article(measured)}. Write it like ${example}.`;
    case "other-digits":
      return `${text} has digits other than 0 to 9. Write it with those.`;
    case "unknown-unit":
      return `${text} has the unit ${quoted(problem.unit)}, which is not known here. Use ${units[measured]}.`;
    case "no-unit":
      return `${text} has no unit. Add ${units[measured]}.`;
    case "zero":
      return `${text} leaves nothing to work with. Measure again, or leave it out.`;
    case "negative":
      return `${text} is less than nothing. Take the minus away.`;
    case "too-large":
      return `${text} is larger than any quilt needs. Check the number and its unit.`;
    case "ambiguous":
      return `${text} may mean ${problem.readings.join(" or ")}. Write the one you mean.`;
    case "date":
      return `${text} looks like a date. ${dateAdvice(problem.fraction)}`;
  }
}

function article(measured: Measured): string {
  return measured === "area" ? "an area" : `a ${measured}`;
}

function dateAdvice(fraction: string | null): string {
  if (fraction === null) {
    return "A spreadsheet may have changed what you typed. Type the size again as text, or with a point, such as 2.5.";
  }
  const decimal = decimalOf(fraction);
  const or = decimal === null ? "" : `, or as ${decimal}`;
  return `A spreadsheet may have changed ${fraction}. Type ${fraction} again as text${or}.`;
}

/** 3/8 as 0.375; null where no short decimal is exact. */
function decimalOf(fraction: string): string | null {
  const [above, below] = fraction.split("/").map(Number);
  if (above === undefined || below === undefined) return null;
  const decimal = String(above / below);
  return /^\d+(\.\d{1,6})?$/.test(decimal) ? decimal : null;
}

export function sizeProblem(problem: SizeProblem): string {
  switch (problem.kind) {
    case "not-two-lengths":
      return `${quoted(problem.text)} does not read as a width and a height. Write it like 60x80.`;
    case "side":
      return `${problem.side}: ${lengthProblem(problem.problem)}`;
  }
}
