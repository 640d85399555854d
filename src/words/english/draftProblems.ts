import type {
  DraftProblem,
  JobField,
  JobProblem,
  PieceField,
  PieceProblem,
} from "../../engine/cloth/index.ts";
import { quoted, type Voice } from "../voice.ts";
import { grainNames, kindName } from "./names.ts";

export function draftProblem(problem: DraftProblem, voice: Voice): string {
  if (problem.row === null) return jobProblem(problem, voice);
  const field = fieldName(problem.field, voice);
  return `Row ${problem.row}, ${field}: ${pieceProblem(problem, voice)}`;
}

function fieldName(field: PieceField, { trade }: Voice): string {
  return field === "colour" ? trade.colour : field;
}

export function pieceProblem(problem: PieceProblem, voice: Voice): string {
  switch (problem.kind) {
    case "size-missing":
      return "nothing is written here. Add the size as cut.";
    case "size-zero":
      return "the size is 0. Add the size as cut, or leave the row out.";
    case "piece-too-large":
      return `${voice.length(problem.size)} is more than the ${voice.length(problem.most)} a piece may have. Check the number and its unit.`;
    case "narrower-than-seams":
      return `${voice.length(problem.size)} is no wider than its two seams, ${voice.length(problem.seams)} together. Sew it into a slab, or leave it out.`;
    case "count-not-whole":
      return `${voice.number(problem.count)} is not a whole number of pieces. Write how many there are.`;
    case "count-too-small":
      return `there are ${voice.number(problem.count)} of these. Write 1 or more, or leave the row out.`;
    case "count-too-large":
      return `${voice.number(problem.count)} is more than the ${voice.number(problem.most)} pieces one row may have. Write how many there are.`;
    case "crumbs-counted":
      return "crumbs are one heap. Leave the count out, and give the area or weight of all of them together.";
    case "crumbs-without-amount":
      return "crumbs need an area or a weight. Weigh them, or spread them out and measure.";
    case "amount-zero":
      return "nothing is left to work with. Weigh or measure again, or leave the row out.";
    case "amount-too-large":
      return `this is more than ${voice.area(problem.most)} of cloth. Check the number and its unit.`;
    case "area-and-weight":
      return "an area is given too, so the weight is left alone.";
    case "not-used":
      return notUsed(problem.field);
    case "no-colour":
      return `no ${voice.trade.colour} is given, so contrast is planned without this fabric. Write a ${voice.trade.colour}, such as teal or #3e4257.`;
    case "unknown-colour":
      return `${quoted(problem.colour)} is no ${voice.trade.colour} that is known here. Write a plain one such as teal, or one like #3e4257.`;
    case "colour-conflict":
      return colourConflict(problem, voice);
    case "grain-not-for-kind":
      return grainNotForKind(problem, voice);
  }
}

function notUsed(field: "width" | "height" | "area" | "weight"): string {
  if (field === "width" || field === "height")
    return "crumbs are known by area or weight, so this is left alone.";
  return "a piece with a width and a height needs nothing more, so this is left alone.";
}

function colourConflict(problem: Extract<PieceProblem, { kind: "colour-conflict" }>, voice: Voice): string {
  const { fabric, colour, firstRow, firstColour } = problem;
  return `${quoted(fabric)} is ${quoted(colour)} here and ${quoted(firstColour)} in row ${firstRow}. They are kept as two fabrics. If they are one, give both rows the same ${voice.trade.colour}.`;
}

function grainNotForKind(
  problem: Extract<PieceProblem, { kind: "grain-not-for-kind" }>,
  voice: Voice,
): string {
  const kinds = kindName(problem.pieceKind, 2, voice);
  const words =
    problem.pieceKind === "triangle" ? ["legs", "long-side", "unknown"] : ["straight", "bias", "unknown"];
  return `${quoted(problem.grain)} (${grainNames[problem.grain]}) is not said of ${kinds}. Write ${voice.either(words)}.`;
}

function jobProblem(problem: JobProblem, voice: Voice): string {
  switch (problem.kind) {
    case "back-zero":
      return `The ${problem.side} of the back is 0. Give the size of the back from edge to edge.`;
    case "back-too-small":
      return `The ${problem.side} of the back is ${voice.length(problem.size)}, and ${voice.length(problem.least)} is the least to piece anything in. Check the number and its unit.`;
    case "back-too-large":
      return `The ${problem.side} of the back is ${voice.length(problem.size)}, and ${voice.length(problem.most)} is the most. Check the number and its unit.`;
    case "back-off-step":
      return `The ${problem.side} of the back, ${voice.length(problem.size)}, lies between two marks of the ruler. It is made ${voice.length(problem.made)}.`;
    case "top-zero":
      return `The ${problem.side} of the top is 0. Measure the top and give both sides.`;
    case "top-larger-than-back":
      return `The ${problem.side} of the top is ${voice.length(problem.top)} and that of the back ${voice.length(problem.back)}. Make the back larger than the top.`;
    case "back-short-of-extra":
      return `The ${problem.side} of the back is ${voice.length(problem.back)}; with the extra you asked for it would be ${voice.length(problem.wanted)}. Make the back larger, or ask for less extra.`;
    case "extra-out-of-range":
      return `The extra on each side is ${voice.length(problem.size)}. Choose it from ${voice.length(problem.least)} to ${voice.length(problem.most)}.`;
    case "out-of-range":
      return `${jobFieldNames[problem.field]} is ${voice.length(problem.size)}. Choose it from ${voice.length(problem.least)} to ${voice.length(problem.most)}.`;
    case "unknown-plain-colour":
      return `The plain cloth: ${quoted(problem.colour)} is no ${voice.trade.colour} that is known here. Write a plain one such as teal, or one like #3e4257.`;
    case "too-many-pieces":
      return `There are ${voice.count(problem.total, "piece", "pieces")}, and one plan holds ${voice.number(problem.most)}. Leave some of them for the next quilt.`;
    case "nothing-to-plan":
      return "There is no leftover to use: the list is empty, or all of it is kept back or given away. Add one, or mark one for use.";
  }
}

const jobFieldNames: { readonly [F in JobField]: string } = {
  step: "The smallest mark of the ruler",
  seam: "The seam allowance",
  plainSeam: "The seam allowance between plain parts",
  top: "The top",
  back: "The back",
  floor: "The smallest piece to place by itself",
  clothWidth: "The usable width of the cloth",
  plain: "The plain cloth",
  pieces: "The leftovers",
};
