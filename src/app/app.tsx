import { StrictMode } from "react";
import { I18nProvider } from "react-aria-components";
import { Frame } from "./frame/frame.tsx";
import { type Surroundings, SurroundingsContext } from "./frame/surroundings.ts";

/** The whole app, given what it stands on. */
export function App(surroundings: Surroundings) {
  return (
    <StrictMode>
      <I18nProvider locale={surroundings.locale === "en-XA" ? "en-US" : surroundings.locale}>
        <SurroundingsContext value={surroundings}>
          <Frame />
        </SurroundingsContext>
      </I18nProvider>
    </StrictMode>
  );
}
