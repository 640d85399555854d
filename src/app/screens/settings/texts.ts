import { useMemo } from "react";
import type { DisplayUnit } from "../../../engine/length/index.ts";
import { type SettingsTexts, settingsTexts } from "../../../words/index.ts";
import { newBackSettings, useLocale, usePreferences } from "../../frame/index.ts";

/** The page's texts, sizes in `unit`, or in what she works in. */
export function useSettingsTexts(unit?: DisplayUnit): SettingsTexts {
  const locale = useLocale();
  const [{ newBacks }] = usePreferences();
  const shown = unit ?? newBackSettings(newBacks, locale).unit;
  return useMemo(() => settingsTexts(locale, shown), [locale, shown]);
}
