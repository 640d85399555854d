/** Where the app is put together. The only file that knows every part. */
import "./styles/index.css";
import { useEffect } from "react";
import { createRoot } from "react-dom/client";
import { openPreferences, openStore } from "../store/index.ts";
import { frameWords } from "../words/index.ts";
import { App } from "./app.tsx";
import { chosenLocale, spokenLocale, useChosenLook, useSpokenLocale } from "./frame/chosen.ts";
import { listenForFiles } from "./frame/handedFile.ts";
import { fetchLanguage } from "./frame/language.ts";
import { fetchPage, fetchPagesWhenIdle, firstPageShown } from "./frame/page.tsx";
import { routeOf } from "./frame/route.ts";
import { keepForOffline } from "./offline/laterVerso.ts";
// The start page comes in the first script: each file more would be asked for, and waited for, by itself.
import "./screens/projects/projects.tsx";

const first = routeOf(location.hash);
const firstPage = fetchPage(first.screen);

const preferences = openPreferences(given(() => localStorage));

const store = openStore({
  clock: () => Date.now(),
  newId: () => crypto.randomUUID(),
  // The words may be others by the time one is made.
  get titleOfNew() {
    return frameWords(spokenLocale(preferences)).titleOfNew;
  },
  storage: given(() => indexedDB),
  device: navigator.storage ?? null,
});

function Verso() {
  const locale = useSpokenLocale(preferences);
  useChosenLook(preferences);
  useEffect(() => {
    document.documentElement.lang = locale === "en-XA" ? "en" : locale;
  }, [locale]);
  return <App locale={locale} store={store} preferences={preferences} />;
}

// Her back is read from the disk while the page it is shown on comes.
if (first.screen !== "projects" && first.project !== undefined) store.open(first.project).catch(() => {});

// As long as one waits without wondering, in milliseconds.
const soon = 500;

// What can't be fetched must not keep the app away: then it begins in English, and says that the page is coming.
void Promise.allSettled([
  fetchLanguage(chosenLocale(preferences)),
  Promise.race([firstPage, new Promise((done) => setTimeout(done, soon))]),
]).then(begin);

function begin(): void {
  const place = document.getElementById("app");
  if (place !== null) createRoot(place).render(<Verso />);
}

listenForFiles();
// On a slow network nothing else may come before the page that she waits for.
void firstPageShown.then(() => {
  fetchPagesWhenIdle();
  if (import.meta.env.PROD) void keepForOffline();
});

/** Some browsers refuse even to be asked. */
function given<T>(ask: () => T | undefined): T | null {
  try {
    return ask() ?? null;
  } catch {
    return null;
  }
}
