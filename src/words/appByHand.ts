/** What is said while she changes a plan by hand. */
import type { Edit, LayoutProblem, Shift, Side } from "../engine/layout/index.ts";
import { type DisplayUnit, type LengthProblem, length } from "../engine/length/index.ts";
import type { Refusal } from "../engine/plan/index.ts";
import { lengthProblem } from "./english/lengthProblems.ts";
import { fabricNameOf, leftoverName } from "./english/steps.ts";
import type { Locale } from "./locales.ts";
import type { Names } from "./types.ts";
import { sentence, type Voice } from "./voice.ts";
import { inWordSet } from "./wordSet.ts";

export type HandTexts = {
  readonly swap: string;
  readonly swapHow: string;
  readonly noPartner: string;
  readonly turn: string;
  readonly makePlain: string;
  readonly otherCloth: string;
  readonly placeAndSize: string;
  readonly whichPart: string;
  readonly byHowMuch: string;
  readonly move: { readonly [D in "left" | "right" | "up" | "down"]: string };
  readonly become: { readonly [S in "narrower" | "wider" | "shorter" | "taller"]: string };
  readonly size: { readonly [S in Side]: string };
  readonly makeItSo: string;
  readonly problem: (problem: LengthProblem) => string;
  /** One of two readings, on a button. */
  readonly meant: (reading: string) => string;
  /** What has come of an edit. */
  readonly made: (edit: Edit, names: Names) => string;
  readonly whyNot: (refusal: Refusal, names: Names) => string;
  readonly changed: string;
  readonly takeBack: string;
  readonly changesAreOld: string;
};

export function handTexts(locale: Locale, unit: DisplayUnit): HandTexts {
  return inWordSet(locale, unit, { name: "hand", english });
}

type Said = { readonly names: Names; readonly voice: Voice };

function english(voice: Voice): HandTexts {
  return {
    swap: "Swap with another",
    swapHow: "With which one? Tap it in the drawing, or choose it here.",
    noPartner: "Nothing else in this plan fits here and could take this one’s place.",
    turn: "Turn it",
    makePlain: "Make it plain",
    otherCloth: "Other cloth here",
    placeAndSize: "Place and size",
    whichPart: "What?",
    byHowMuch: "By how much?",
    move: { left: "To the left", right: "To the right", up: "Up", down: "Down" },
    become: { narrower: "Narrower", wider: "Wider", shorter: "Shorter", taller: "Taller" },
    size: { width: "Width once sewn", height: "Height once sewn" },
    makeItSo: "Make it so",
    problem: (problem) => sentence(lengthProblem(problem)),
    meant: (reading) => `It is ${reading}`,
    made: (edit, names) => madeText(edit, { names, voice }),
    whyNot: (refusal, names) => whyNotText(refusal, { names, voice }),
    changed: "You changed this plan by hand. It can be sewn as it is.",
    takeBack: "Take all my changes back",
    changesAreOld:
      "Your leftovers or the size changed since you changed a plan by hand, so it is planned again. Undo brings yours back.",
  };
}

function madeText(edit: Edit, { names, voice }: Said): string {
  switch (edit.kind) {
    case "swap":
      return "They have changed places.";
    case "turn":
      return "It is turned.";
    case "make-plain":
      return "It is plain now. What lay here is with your leftovers again.";
    case "put":
      return `${sentence(leftoverName(edit.piece.piece, names))} lies here now.`;
    case "cloth":
      return `This part is of ${fabricNameOf(edit.fabric, names)} now.`;
    case "move":
      return `It lies ${sizeOf(edit, voice)} further ${sayShift(edit, moves)} now.`;
    case "resize":
      return `It is ${sizeOf(edit, voice)} ${sayShift(edit, changes)} now. The rest of its ${edit.along === "width" ? "row" : "column"} makes up for it.`;
  }
}

const moves = { width: ["left", "right"], height: ["up", "down"] } as const;
const changes = { width: ["narrower", "wider"], height: ["shorter", "taller"] } as const;

function sizeOf({ by }: Shift, voice: Voice): string {
  return voice.length(length(Math.abs(by)));
}

function sayShift({ along, by }: Shift, ways: typeof moves | typeof changes): string {
  return ways[along][by < 0 ? 0 : 1];
}

function whyNotText(refusal: Refusal, said: Said): string {
  switch (refusal.kind) {
    case "same":
      return "It would look just as it does now.";
    case "sewn":
      return "It is sewn from several pieces and lies as it is sewn.";
    case "another-size":
      return "What is sewn already keeps its size. It can change places with one of the very same size.";
    case "would-stretch":
      return `${sentence(leftoverName(refusal.piece, said.names))} would stretch at the edge of the back: how its grain runs is not known, or it runs slanting. Leave it inside.`;
    case "too-little-cloth":
      return `There is not enough ${fabricNameOf(refusal.fabric, said.names)} for it beside what else is cut from it.`;
    case "off-ruler":
      return `Sizes go by ${said.voice.length(refusal.step)} here, the step of your ruler.`;
    case "at-the-end":
      return "Nothing lies on one side of it that could give or take. You can swap it with what lies on the other.";
    case "no-room":
      return refusal.most === 0
        ? "What lies beside it can’t give or take anything: it is as narrow as it can be sewn, or keeps its size."
        : `What lies beside it can give or take ${said.voice.length(refusal.most)} at most.`;
    case "keeps-size":
      return refusal.most === 0
        ? "It can’t change so: it is as narrow as it can be sewn, or what it is sewn from is no larger."
        : `It can change by ${said.voice.length(refusal.most)} at most, for what it is sewn from.`;
    case "cannot-be-sewn":
      return unsewableText(refusal.problem, said);
  }
}

function unsewableText(problem: LayoutProblem, { names, voice }: Said): string {
  const name = "piece" in problem && problem.piece !== undefined ? leftoverName(problem.piece, names) : "it";
  switch (problem.kind) {
    case "piece-too-small":
      return `${sentence(name)} is too small for that place: it has ${voice.length(problem.has)}, and ${voice.length(problem.needed)} is needed.`;
    case "trimmed-too-much":
      return `${sentence(name)} is too large for that place: ${voice.length(problem.trimmed)} would be trimmed off, and ${voice.length(problem.most)} is the most.`;
    case "not-whole":
      return `${sentence(name)} is to stay whole, and would be trimmed in that place.`;
    case "one-way-turned":
      return `The print of ${name} stands upright, and would lie on its side.`;
    case "copy-too-short":
      return `${sentence(name)} is too short for it beside what else is cut from it.`;
    case "used-too-often":
      return `There is no more of ${name}: all of it lies in this plan.`;
    case "cloth-too-wide":
      return `It would take cloth ${voice.length(problem.needed)} wide, and yours is ${voice.length(problem.has)}.`;
    case "under-smallest":
      return "It would be too narrow to sew.";
    default:
      return "It does not fit there.";
  }
}
