import type { ChoiceNote, Reason } from "../../engine/choice/index.ts";
import { sentence, type Voice } from "../voice.ts";
import { styleName } from "./names.ts";

/** What speaks for a plan, in one line. */
export function reasonsText(reasons: readonly Reason[], voice: Voice): string {
  return `${sentence(reasons.map((reason) => reasonText(reason, voice)).join("; "))}.`;
}

function reasonText(reason: Reason, voice: Voice): string {
  const { percent } = voice;
  switch (reason.kind) {
    case "lighter":
      return `${percent(reason.work)} less work than ${styleName(reason.than, voice)}${lessUsed(reason.used, voice)}`;
    case "least-work":
      return "the least work";
    case "uses-most":
      return `uses most of your leftovers, ${percent(reason.used)}`;
    case "nothing-to-buy":
      return "nothing to buy";
    case "buys-least":
      return "the least cloth to buy";
    case "strongest-contrast":
      return "the strongest contrast";
    case "all-over":
      return "for who likes them all over";
    case "between":
      return `lies between the others, with ${percent(reason.used)} of your leftovers`;
  }
}

function lessUsed(used: number, { percent }: Voice): string {
  return used < 0.005 ? "" : ` for ${percent(used)} less used`;
}

export function choiceNoteText(note: ChoiceNote, voice: Voice): string {
  switch (note.kind) {
    case "no-more":
      return note.count === 1
        ? "Your leftovers give one plan: any other looks like it, or is no better in anything."
        : `Your leftovers give ${voice.number(note.count)} plans: any other looks like one of these, or is no better in anything.`;
    case "must-buy":
      return `No plan here does without buying. The least is ${voice.area(note.area)} of cloth. Add a length, or choose a smaller back.`;
  }
}
