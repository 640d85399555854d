import { useMemo, useSyncExternalStore } from "react";
import type { DisplayUnit } from "../../engine/length/index.ts";
import type { Locale } from "../../words/index.ts";
import { useLocale, useProject } from "../frame/index.ts";

/** A page's table of texts, in her word set and the open project's unit. */
export function useTexts<T>(texts: (locale: Locale, unit: DisplayUnit) => T): T {
  const locale = useLocale();
  const project = useProject();
  // Many parts of a page speak: none is drawn anew because something else has changed.
  const unit = useSyncExternalStore(project.subscribe, () => project.state().project.settings.unit);
  return useMemo(() => texts(locale, unit), [texts, locale, unit]);
}
