/** What she chose for this device, put into effect: the words and the look. */
import { useEffect, useState, useSyncExternalStore } from "react";
import type { Look, PreferencesStore } from "../../store/index.ts";
import { isFetched, type Locale } from "../../words/index.ts";
import { fetchLanguage } from "./language.ts";
import { localeFor } from "./locale.ts";

/** The word set she chose, or the one that the browser says she reads. */
export function chosenLocale(preferences: PreferencesStore): Locale {
  const { words } = preferences.state();
  return localeFor(words === null ? navigator.languages : [words], location.search);
}

/** The same, if it can be spoken yet. */
export function spokenLocale(preferences: PreferencesStore): Locale {
  const chosen = chosenLocale(preferences);
  return isFetched(chosen) ? chosen : "en-GB";
}

/** What was spoken before stays until what she chose is there; where it can't be fetched, for good. */
export function useSpokenLocale(preferences: PreferencesStore): Locale {
  const chosen = useSyncExternalStore(preferences.subscribe, () => chosenLocale(preferences));
  const [spoken, speak] = useState(() => spokenLocale(preferences));
  useEffect(() => {
    const wanted = { still: true };
    fetchLanguage(chosen).then(
      () => wanted.still && speak(chosen),
      () => {},
    );
    return () => {
      wanted.still = false;
    };
  }, [chosen]);
  return isFetched(chosen) ? chosen : spoken;
}

export function useChosenLook(preferences: PreferencesStore): void {
  const look = useSyncExternalStore(preferences.subscribe, () => preferences.state().look);
  useEffect(() => show(look), [look]);
}

/** The styles know each look by its name; without one they follow the device. */
function show(look: Look): void {
  const page = document.documentElement;
  if (look === "device") delete page.dataset.look;
  else page.dataset.look = look;
  const ground = getComputedStyle(page).getPropertyValue("--ground").trim();
  for (const meta of document.querySelectorAll<HTMLMetaElement>("meta[name=theme-color]"))
    if (look !== "device") meta.content = ground;
    else meta.content = meta.media.includes("dark") ? "#272421" : "#f5f1e8";
}
