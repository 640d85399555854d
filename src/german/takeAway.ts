import type { Length } from "../engine/length/index.ts";
import type { DrawingWords, PlanDocument } from "../files/index.ts";
import { sentence, type TakeAwayTexts, type Voice } from "../words/index.ts";
import { styleNames, styleSentence } from "./names.ts";
import { figureLines } from "./plan.ts";

export function takeAway(voice: Voice): TakeAwayTexts {
  return {
    heading: "Zum Mitnehmen",
    what: "Der Plan als Bild zum Ansehen und Drucken, als Datei für andere Programme, und deine Reste als Tabelle.",
    form: {
      png: "Bild (PNG)",
      svg: "Maßstäbliche Zeichnung (SVG)",
      json: "Der Plan (JSON)",
      table: "Reste (CSV)",
    },
    share: {
      png: "Das Bild teilen (PNG)",
      svg: "Die maßstäbliche Zeichnung teilen (SVG)",
      json: "Den Plan teilen (JSON)",
      table: "Die Reste teilen (CSV)",
    },
    tableName: (title) => `${title}, Reste`,
    picture: (plan, ruler) => pictureWords(plan, ruler, voice),
    notMade: "Dieser Browser konnte die Datei nicht machen. Nimm stattdessen die maßstäbliche Zeichnung.",
  };
}

function pictureWords(
  { top, back, style, figures }: PlanDocument,
  ruler: Length,
  voice: Voice,
): DrawingWords {
  const covered = figureLines(figures, voice)[0] ?? "";
  return {
    title: `${sentence(styleNames[style])}, ${voice.size(back)}`,
    description: styleSentence(style),
    caption: [styleSentence(style), covered],
    width: voice.length(back.width),
    height: voice.length(back.height),
    ruler: voice.length(ruler),
    seenFrom: "Von hinten gesehen, wie sie zum Nähen ausgelegt wird.",
    ...(top === null ? {} : { cutOff: "Schraffiert: wird nach dem Quilten abgeschnitten." }),
    more: (count) => `und ${voice.count(count, "weiterer Stoff", "weitere Stoffe")}`,
  };
}
