import type { SittingTexts, Voice } from "../words/index.ts";
import { timeText } from "./measures.ts";
import { unitName } from "./names.ts";

export function sitting(voice: Voice): SittingTexts {
  const minutesText = (minutes: number) => voice.count(minutes, "Minute", "Minuten");
  return {
    heading: "Wie viel Zeit hast du?",
    what: "Schritte, die hineinpassen, und keine Reihe ist halb genäht, wenn du aufstehst.",
    minutes: minutesText,
    iHave: (minutes) => `Ich habe ${minutesText(minutes)}`,
    tooShort: (minutes) =>
      `Das ist zu kurz für etwas, das ordentlich endet. Die nächste Arbeit dauert ${timeText(minutes, voice)}.`,
    is: (steps, minutes) =>
      `${voice.count(steps, "Schritt", "Schritte")} für jetzt, ${timeText(minutes, voice)}`,
    step: ({ id }) => unitName(id),
    isDone: "fertig",
    all: "Das ist alles für jetzt. Keine Reihe ist halb genäht.",
    end: "Zurück zu allen Schritten",
  };
}
