/** Where the app is put together. The only file that knows every part. */
import "./styles/index.css";
import { createRoot } from "react-dom/client";
import { openStore } from "../store/index.ts";
import { frameWords } from "../words/index.ts";
import { App } from "./app.tsx";
import { localeFor } from "./frame/locale.ts";
import { fetchPagesWhenIdle } from "./frame/page.tsx";
import { keepForOffline } from "./offline/laterVerso.ts";

const locale = localeFor(navigator.languages, location.search);
document.documentElement.lang = locale === "en-XA" ? "en" : locale;

const store = openStore({
  clock: () => Date.now(),
  newId: () => crypto.randomUUID(),
  titleOfNew: frameWords(locale).titleOfNew,
  storage: storageOf(window),
  device: navigator.storage ?? null,
});

const place = document.getElementById("app");
if (place !== null) createRoot(place).render(<App locale={locale} store={store} />);

fetchPagesWhenIdle();
if (import.meta.env.PROD) void keepForOffline();

/** Some browsers refuse even to be asked. */
function storageOf(from: Window & typeof globalThis): IDBFactory | null {
  try {
    return from.indexedDB ?? null;
  } catch {
    return null;
  }
}
