import type { ReferencePage } from "../engine/cards/index.ts";
import { formatWithUnit, inches, millimetres } from "../engine/length/index.ts";
import type { CardsWords, Voice } from "../words/index.ts";

export function cards(voice: Voice): CardsWords {
  const apart =
    voice.unit === "in" ? voice.length(inches(1, 2)) : formatWithUnit(millimetres(12), { unit: "mm" });
  return {
    title: "Verso: Karten und Bogen",
    language: voice.trade.language,
    notes: (page) => (page.kind === "cards" ? cardNotes(page, apart) : sheetNotes(page, apart)),
    markers: (page) =>
      page.kind === "cards"
        ? "Vier schwarze Marken, eine in der Mitte jeder Karte."
        : "Vier schwarze Marken, eine nahe jeder Ecke des Bogens.",
  };
}

function cardNotes(page: ReferencePage, apart: string): readonly string[] {
  return [
    measureFirst(page),
    "Dann schneide an beiden Linien entlang. Leg an jede Ecke deiner Stücke eine Karte, flach und mit der Schrift nach oben; gedreht darf sie liegen, wie du willst.",
    `Bügle zuerst. Leg die Stücke mit ${apart} Abstand auf eine gleichmäßige Farbe, alle innerhalb der Karten.`,
    softLight,
  ];
}

function sheetNotes(page: ReferencePage, apart: string): readonly string[] {
  return [
    `${measureFirst(page)} Lass den Bogen ganz, und leg ihn flach und mit der Schrift nach oben. Zwei Bogen auf gegenüberliegenden Seiten deiner Stücke messen am besten; mit einem allein sind die Maße ungefähr.`,
    `Bügle zuerst. Leg die Stücke mit ${apart} Abstand auf eine gleichmäßige Farbe. ${softLight}`,
  ];
}

function measureFirst({ bar, paper }: ReferencePage): string {
  const length =
    paper === "a4"
      ? formatWithUnit(bar, { unit: "mm" })
      : `${formatWithUnit(bar, { unit: "in", name: "Inch" })}`;
  return `Druck mit 100 %, nicht an die Seite angepasst. Beide Linien müssen von Endstrich zu Endstrich ${length} lang sein: Miss nach.`;
}

const softLight =
  "Weiches Licht, kein Blitz. Halte die Kamera so waagerecht darüber, wie du kannst, jede Karte und jeder Bogen ganz im Foto.";
