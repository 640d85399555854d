import type { Length } from "../../engine/length/index.ts";
import type { DrawingWords, PlanDocument } from "../../files/index.ts";
import type { Words } from "../types.ts";
import { sentence } from "../voice.ts";

type Said = Pick<Words, "style" | "styleIs" | "size" | "length" | "figures" | "number">;
type Pictured = Pick<PlanDocument, "back" | "style" | "figures"> & { readonly top: object | null };

/** What stands on the picture of a plan that leaves Verso as a file. */
export function pictureWords(
  { top, back, style, figures }: Pictured,
  ruler: Length,
  words: Said,
): DrawingWords {
  const covered = words.figures(figures)[0] ?? "";
  return {
    title: `${sentence(words.style(style))}, ${words.size(back)}`,
    description: words.styleIs(style),
    caption: [words.styleIs(style), ...(covered === "" ? [] : [covered])],
    width: words.length(back.width),
    height: words.length(back.height),
    ruler: words.length(ruler),
    seenFrom: "Seen from behind, as it is laid out to be sewn.",
    ...(top === null ? {} : { cutOff: "Hatched: cut away after quilting." }),
    more: (count) => `and ${count === 1 ? "1 more fabric" : `${words.number(count)} more fabrics`}`,
  };
}
