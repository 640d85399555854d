/** How a large drawing is looked at. */
import type { View } from "../engine/drawing/index.ts";
import type { DisplayUnit } from "../engine/length/index.ts";
import type { Locale } from "./locales.ts";
import { sentence, type Voice } from "./voice.ts";
import { inWordSet } from "./wordSet.ts";

export type ViewTexts = {
  readonly view: string;
  readonly views: { readonly [V in View]: string };
  /** What each of them shows; under the drawing. */
  readonly viewIs: { readonly [V in View]: string };
  readonly sewn: (done: number, all: number) => string;
  readonly listToGo: string;
  readonly size: string;
  readonly larger: string;
  readonly smaller: string;
  readonly whole: string;
  /** The drawing where it is larger than its place. */
  readonly enlarged: string;
};

export function viewTexts(locale: Locale, unit: DisplayUnit): ViewTexts {
  return inWordSet(locale, unit, { name: "views", english });
}

function english({ trade, number, count }: Voice): ViewTexts {
  return {
    view: "What the drawing shows",
    views: {
      cloth: "Your cloth",
      colour: sentence(trade.colour),
      value: "Light and dark",
      seams: "Seams",
      "to-go": "Steps to go",
      "through-top": "Under the top",
    },
    viewIs: {
      cloth: `Seen from behind, as you lay it out to sew: cloth that was photographed as its photo shows it, the rest in its ${trade.colour}.`,
      colour: "Seen from behind, as you lay it out to sew.",
      value: `Seen from behind: how light or dark each fabric is, without its ${trade.colour}.`,
      seams: "Seen from behind: the seams alone.",
      "to-go": `Seen from behind: what is sewn in its ${trade.colour}; what is still to be sewn pale, with the number of the step that sews it first.`,
      "through-top":
        "Seen from the front, as if through the top, framed: left and right have changed places. Check here that no dear piece is cut away.",
    },
    sewn: (done, all) => `Sewn so far: ${number(done)} of ${count(all, "step", "steps")}.`,
    listToGo: "Steps to go as a list",
    size: "Size of the drawing",
    larger: "Larger",
    smaller: "Smaller",
    whole: "Whole",
    enlarged: "The drawing, enlarged. The arrow keys move it; plus, minus and zero change its size.",
  };
}
