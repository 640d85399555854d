import type { PlanProblem, PlanValueType } from "../../files/index.ts";
import { quoted, type Voice } from "../voice.ts";

/** The place in the file as it is written there, so that it can be searched for. */
export function planProblem(problem: PlanProblem, voice: Voice): string {
  const text = whatIsWrong(problem, voice);
  return problem.path === "" ? text : `At ${quoted(problem.path).slice(1, -1)}: ${text}`;
}

const valueTypes: { readonly [T in PlanValueType]: string } = {
  object: "a group in curly brackets",
  list: "a list in square brackets",
  text: "text in quotation marks",
  number: "a number",
  "whole-number": "a whole number",
  "yes-or-no": "true or false",
};

function whatIsWrong(problem: PlanProblem, voice: Voice): string {
  switch (problem.kind) {
    case "file-too-large":
      return `This file is larger than ${voice.number(problem.most / 1_000_000)} MB, and no plan is. Check that it is the right file.`;
    case "not-json":
      return "This file does not read as a plan: it is cut off or is another kind of file. Save the plan again.";
    case "not-a-plan":
      return "This file is not one of Verso's plans. Check that it is the right file.";
    case "newer-version":
      return `This plan was written by a later Verso (version ${voice.number(problem.version)}; this one reads ${voice.number(problem.known)}). Get the later Verso to read it.`;
    case "missing":
      return "nothing is written here, and something must be. Add it, or save the plan again.";
    case "wrong-type":
      return `${valueTypes[problem.expected]} belongs here.`;
    case "not-one-of":
      return `write ${voice.either(problem.choices.map(String))} here.`;
    case "not-a-length":
      return `no ruler shows ${problem.value}. Sizes are whole numbers of 1/320 mm; write more decimals.`;
    case "out-of-range":
      return `${problem.value} does not fit here. Write ${voice.number(problem.least)} to ${voice.number(problem.most)}.`;
    case "text-too-long":
      return `this text has more than ${voice.number(problem.most)} letters. Shorten it.`;
    case "too-many":
      return `there are more than ${voice.number(problem.most)} of these. A plan has fewer.`;
    case "too-deep":
      return `joins lie more than ${voice.number(problem.most)} deep in each other. A plan is simpler.`;
    case "twice":
      return `${quoted(problem.id)} names two things. Give each a name of its own.`;
    case "not-one-source":
      return "this part must be one of a piece, a step or cloth. Keep one of them.";
    case "more-problems":
      return "There may be more like these further on. Mend these first, and look again.";
  }
}
