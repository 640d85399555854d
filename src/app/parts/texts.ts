import { useMemo } from "react";
import type { DisplayUnit } from "../../engine/length/index.ts";
import type { Locale } from "../../words/index.ts";
import { useLocale, useProjectState } from "../frame/index.ts";

/** A page's table of texts, in her word set and the open project's unit. */
export function useTexts<T>(texts: (locale: Locale, unit: DisplayUnit) => T): T {
  const locale = useLocale();
  const { unit } = useProjectState().project.settings;
  return useMemo(() => texts(locale, unit), [texts, locale, unit]);
}
