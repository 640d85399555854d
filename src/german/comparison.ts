import type { Figures } from "../engine/plan/index.ts";
import { type ComparisonTexts, momentText, type Voice } from "../words/index.ts";
import { quoted } from "./measures.ts";
import { contrastName } from "./plan.ts";

type Named = { readonly name: string; readonly at: number };

export function comparison(voice: Voice): ComparisonTexts {
  return {
    sideBySide: "Pläne nebeneinander",
    close: "Schließen",
    which: "Welche?",
    onlyOne: "Bisher gibt es nur einen Plan. Die anderen werden noch gezeichnet.",
    ...factTexts(voice),
    looksAt: "Den du ansiehst",
    keeps: "Den du behältst",
    keepsOld: "Den du behältst, für die Reste und Maße von damals",
    keptUnder: ({ at }) => `Unter diesem Namen aufgehoben ${momentText(at, voice)}`,
    goOn: "Weiter mit",
    take: "Diesem",
    takeOf: (name) => `Weiter mit ${name}`,
    ...nameTexts(voice),
  };
}

function factTexts({ area, count, percent }: Voice) {
  return {
    time: "Zeit",
    toBuy: "Kaufen",
    covered: "Reste",
    seams: "Nähen",
    plain: "Grundstoff",
    contrast: "Kontrast",
    coveredOf: ({ covered }: Figures) =>
      covered === 0 ? "keine mit eigenem Maß" : `verwendet ${percent(covered)}`,
    seamsOf: ({ joins }: Figures) => count(joins, "Naht", "Nähte"),
    plainOf: ({ plain, plainCells }: Figures) =>
      plainCells === 0 ? "keiner" : `${area(plain)} in ${count(plainCells, "Fläche", "Flächen")}`,
    contrastOf: ({ contrast }: Figures) =>
      contrast === null ? "ohne Farben nicht bekannt" : contrastName(contrast),
  };
}

function nameTexts(voice: Voice) {
  return {
    underName: "Unter einem Namen aufgehoben",
    underNameHow:
      "Der Plan, den du ansiehst, wird unter einem Namen aufgehoben, mit deinen Resten und Maßen, wie sie jetzt sind. Gehst du dahin zurück, ist das alles wieder da.",
    name: "Name für diesen Plan",
    keepUnder: "Unter diesem Namen aufheben",
    nameFirst: "Gib ihm zuerst einen Namen.",
    noneNamed: "Noch keiner.",
    withoutPlan: "ohne Plan",
    goBack: "Dahin zurück",
    goBackTo: ({ name, at }: Named) => `Zurück zu ${quoted(name)}, aufgehoben ${momentText(at, voice)}`,
    remove: "Entfernen",
    removeNamed: ({ name, at }: Named) => `${quoted(name)} entfernen, aufgehoben ${momentText(at, voice)}`,
    wasRemoved: ({ name }: Named) => `${quoted(name)} ist entfernt.`,
    notRemoved: "Das ließ sich nicht entfernen. Es hat sich nichts geändert.",
    putBack: "Zurückholen",
    wasPutBack: ({ name }: Named) => `${quoted(name)} ist wieder da.`,
    wasKept: (name: string) => `Aufgehoben als ${quoted(name)}.`,
    wentBack: ({ name }: Named) => `Alles ist wie damals: ${quoted(name)}. Rückgängig bringt, was hier war.`,
    notKept: "Das ließ sich nicht aufheben. Speichere diese Rückseite stattdessen als Datei.",
    notGoneBack: "Das lässt sich nicht mehr lesen. Es hat sich nichts geändert.",
  };
}
