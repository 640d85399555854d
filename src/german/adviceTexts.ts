import type { Advice } from "../engine/advice/index.ts";
import type { AdviceTexts, Voice } from "../words/index.ts";
import { adviceText, adviceTitles, adviceWhere } from "./advice.ts";

export function advice(voice: Voice): AdviceTexts {
  return {
    heading: "Bevor du nähst",
    title: ({ kind }) => adviceTitles[kind],
    text: (one, names) => adviceText(one, names, voice),
    where: (one, names) => adviceWhere(one, names, voice),
    show: "Zeigen, wo",
    showOf: ({ kind }) => `Zeigen, wo: ${adviceTitles[kind]}`,
    marked: (one) => `Markiert: ${markedText(one)}.`,
  };
}

function markedText(one: Advice): string {
  if (one.kind !== "contrast") return adviceTitles[one.kind];
  return one.mend === null ? "Stoffe, die schwer zu unterscheiden sind" : "wo der neue Stoff hinkäme";
}
