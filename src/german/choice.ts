import type { ChoiceNote, Reason } from "../engine/choice/index.ts";
import { sentence, type Voice } from "../words/index.ts";
import { quoted } from "./measures.ts";
import { styleNames } from "./names.ts";

/** What speaks for a plan, in one line. */
export function reasonsText(reasons: readonly Reason[], voice: Voice): string {
  return `${sentence(reasons.map((reason) => reasonText(reason, voice)).join("; "))}.`;
}

function reasonText(reason: Reason, { percent }: Voice): string {
  switch (reason.kind) {
    case "lighter": {
      const less = reason.used < 0.005 ? "" : `, dafür ${percent(reason.used)} weniger verwendet`;
      return `${percent(reason.work)} weniger Arbeit als ${quoted(sentence(styleNames[reason.than]))}${less}`;
    }
    case "least-work":
      return "die wenigste Arbeit";
    case "uses-most":
      return `verwendet am meisten von deinen Resten, ${percent(reason.used)}`;
    case "nothing-to-buy":
      return "nichts zu kaufen";
    case "buys-least":
      return "am wenigsten Stoff zu kaufen";
    case "strongest-contrast":
      return "der stärkste Kontrast";
    case "all-over":
      return "wenn du sie überall magst";
    case "between":
      return `liegt zwischen den anderen, mit ${percent(reason.used)} deiner Reste`;
  }
}

export function choiceNoteText(note: ChoiceNote, voice: Voice): string {
  switch (note.kind) {
    case "no-more":
      return note.count === 1
        ? "Deine Reste ergeben einen Plan: Jeder andere sieht ihm ähnlich oder ist in nichts besser."
        : `Deine Reste ergeben ${voice.number(note.count)} Pläne: Jeder andere sieht einem davon ähnlich oder ist in nichts besser.`;
    case "must-buy":
      return `Hier kommt kein Plan ohne Kaufen aus. Das Wenigste sind ${voice.area(note.area)} Stoff. Trag eine Stoffbahn ein, oder wähle eine kleinere Rückseite.`;
  }
}
