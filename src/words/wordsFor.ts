import type { DisplayUnit } from "../engine/length/index.ts";
import { english } from "./english/english.ts";
import type { CliLocale } from "./locales.ts";
import { pseudo } from "./pseudo.ts";
import { american, australian, british } from "./trade.ts";
import type { Words } from "./types.ts";

/** Every text of the command line in one word set, its sizes in `unit`. */
export function wordsFor(locale: CliLocale, unit: DisplayUnit = "in"): Words {
  switch (locale) {
    case "en-US":
      return english(locale, american, unit);
    case "en-GB":
      return english(locale, british, unit);
    case "en-AU":
      return english(locale, australian, unit);
    case "en-XA":
      return pseudo(english(locale, american, unit));
  }
}
