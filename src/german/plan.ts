import type { Figures, Usable } from "../engine/plan/index.ts";
import type { BuyRow, BuyUse } from "../engine/supplies/index.ts";
import { boltText, type Caution, type Names, sentence, type Voice } from "../words/index.ts";
import { roughLength, timeText } from "./measures.ts";
import { fabricNameOf } from "./steps.ts";

/** What a plan uses, takes and costs, a line each. */
export function figureLines(figures: Figures, voice: Voice): readonly string[] {
  const { covered, plain, plainCells, trimWaste, joins, cuts, seamLength, contrast, minutes } = figures;
  return [
    covered === 0
      ? "Kein Rest mit eigenem Maß ist darin."
      : `Er verwendet ${voice.percent(covered)} von dem, was deine Reste bedecken können.`,
    plainCells === 0
      ? "Es ist kein Grundstoff darin."
      : `Grundstoff: ${voice.area(plain)} in ${voice.count(plainCells, "Fläche", "Flächen")}.`,
    `${voice.count(joins, "Naht", "Nähte")} zu nähen, zusammen etwa ${roughLength(seamLength, voice)}, und ${voice.count(cuts, "Schnitt", "Schnitte")}.`,
    `${sentence(timeText(minutes, voice))}, mit Zuschneiden und Bügeln.`,
    trimWaste < 0.005
      ? "So gut wie nichts wird abgeschnitten."
      : `${voice.percent(trimWaste)} der verwendeten Reste werden abgeschnitten.`,
    ...(contrast === null ? [] : [contrastLine(contrast, voice)]),
  ];
}

/** An area that is the same once it is rounded is as good. */
export function usableText({ used, most, time }: Usable, { area }: Voice): string {
  const when = time === "any" ? "" : " in dieser Zeit";
  return area(used) === area(most)
    ? `Das sind ${area(used)}, so viel, wie ein Plan${when} überhaupt verwenden kann.`
    : `Das sind ${area(used)}; mehr als ${area(most)} kann kein Plan${when} verwenden.`;
}

function contrastLine(contrast: number, { number }: Voice): string {
  const steps = number(Math.round(contrast));
  return `Kontrast zwischen Nachbarn: ${contrastName(contrast)} (${steps} von 100 Stufen zwischen Hell und Dunkel).`;
}

export function contrastName(contrast: number): string {
  if (contrast < 5) return "fast keiner";
  if (contrast < 15) return "gering";
  return contrast < 30 ? "mittel" : "stark";
}

export function buyText(
  { use, fabric, width, length }: BuyRow,
  names: Pick<Names, "fabrics">,
  voice: Voice,
): string {
  return `${boltText(length, voice)} ${fabricNameOf(fabric, names)}, ${voice.length(width)} breit, für ${buyUseNames[use]} (gebraucht werden ${voice.length(length)}).`;
}

const buyUseNames: { readonly [U in BuyUse]: string } = {
  plain: "die Flächen aus Grundstoff",
  binding: "die Einfassung (Binding)",
  batting: "das Vlies",
  sleeve: "den Aufhängetunnel",
  label: "das Label",
};

export function cautionText(caution: Caution): string {
  switch (caution) {
    case "cutter":
      return "Rollschneider: Schneide von dir weg, halte die Finger von der Linealkante fern, und schließ die Klinge jedes Mal, wenn du ihn ablegst. Kinder lässt du nicht daran.";
    case "pins":
      return "Stecknadeln: Zieh sie heraus, bevor die Nadel sie erreicht, und heb gleich auf, was herunterfällt.";
    case "machine":
      return "Nähmaschine: Nimm beim Einfädeln den Fuß vom Pedal, und zieh den Stecker, wenn du fertig bist.";
    case "iron":
      return "Bügeleisen: Bleib dabei, solange es heiß ist, und schalte es aus, wenn du den Raum verlässt.";
    case "infants":
      return "Ein Babyquilt ist zum Spielen da, wenn jemand dabei ist. In das Bett eines schlafenden Babys unter einem Jahr gehört er nicht.";
  }
}
