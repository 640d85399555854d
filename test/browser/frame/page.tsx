/** The frame in a page of its own, with made-up pages and a store that does what a test says. */
import "../../../src/app/styles/index.css";
import { createRoot } from "react-dom/client";
import { App } from "../../../src/app/app.tsx";
import { localeFor } from "../../../src/app/frame/locale.ts";
import { openPreferences, type ProjectState } from "../../../src/store/index.ts";
import { madeStore } from "./madeStore.ts";

const { store, say } = madeStore();

declare global {
  interface Window {
    say: (change: Partial<ProjectState>) => void;
  }
}
window.say = say;

const place = document.getElementById("app");
if (place !== null)
  createRoot(place).render(
    <App
      locale={localeFor(navigator.languages, location.search)}
      store={store}
      preferences={openPreferences(null)}
    />,
  );
