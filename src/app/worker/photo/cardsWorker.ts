/** The reference pages are made here: the library that writes them is large. */
import * as pdfkit from "pdfkit";
import helvetica from "pdfkit/standard-fonts/Helvetica";
import { cardsPdf } from "../../../booklet/index.ts";
import type { Paper } from "../../../engine/cards/index.ts";
import type { DisplayUnit } from "../../../engine/length/index.ts";
import { cardsWords, type Locale } from "../../../words/index.ts";
import { fetchLanguage } from "../../frame/language.ts";

export type ToCardsWorker = {
  readonly paper: Paper;
  readonly locale: Locale;
  readonly unit: DisplayUnit;
  /** Milliseconds since 1970. */
  readonly made: number;
};
export type FromCardsWorker = { readonly pdf: Uint8Array } | { readonly failed: string };

// In a browser the library comes without its fonts, and its types without the way to give it one.
const register: unknown = Reflect.get(pdfkit, "registerStdFonts");
if (typeof register === "function") register(helvetica);

addEventListener("message", ({ data }: MessageEvent<ToCardsWorker>) => {
  const { paper, locale, unit, made } = data;
  const pages = fetchLanguage(locale).then(() =>
    cardsPdf({ paper, words: cardsWords(locale, unit), made: new Date(made) }),
  );
  pages.then(
    (pdf) => say({ pdf }),
    (error: unknown) => say({ failed: String(error) }),
  );
});

function say(message: FromCardsWorker): void {
  postMessage(message);
}
