import type { Lab } from "../engine/cloth/index.ts";
import { sentence, type TopPhotoTexts, type Voice } from "../words/index.ts";
import { colourName } from "./colours.ts";
import { refusalText } from "./photoPage.ts";

export function topPhoto(voice: Voice): TopPhotoTexts {
  const named = (lab: Lab, share: number) => `${sentence(colourName(lab))}, ${voice.percent(share)}`;
  return {
    title: "Ein Foto vom Top",
    what: "Mit einem Foto vom fertigen Top siehst du es auf seiner Rückseite, und wie es über einem Plan liegt. Leg oder häng es flach, ganz im Foto. Es bleibt auf diesem Gerät.",
    take: "Foto machen",
    choose: "Foto vom Top wählen",
    another: "Ein anderes Foto wählen",
    remove: "Das Foto wegnehmen",
    opening: "Das Foto wird geöffnet…",
    refused: (why) => refusalText(why, voice),
    failed: "Das Foto ließ sich nicht öffnen. Es wurde nichts geändert. Versuch es noch einmal.",

    marking: "Ecken des Tops",
    how: "Bring jede Marke auf eine Ecke des Tops: Zieh sie, tipp im Foto daneben, oder nimm die Pfeiltasten (mit Umschalt weiter).",
    corners: ["Ecke oben links", "Ecke oben rechts", "Ecke unten rechts", "Ecke unten links"],
    straighten: "Das sind seine Ecken",
    straightening: "Einen Moment…",
    notCorners:
      "Zwei Ecken haben die Plätze getauscht, oder drei liegen in einer Linie. Bring jede Marke auf ihre eigene Ecke.",
    leaveIt: "Lassen",

    added: "Das Top liegt in der Zeichnung auf der Rückseite.",
    removed: "Das Foto ist weg. Rückgängig holt es zurück.",
    onDrawing: "Das Top, wie dein Foto es zeigt.",
    palette: "Farben des Tops",
    paletteWhat:
      "Wie das Foto sie zeigt; sieh dir den Stoff selbst an, bevor du kaufst. Tipp eine an, um sie als Farbe des Grundstoffs zu nehmen.",
    colour: named,
    forPlain: (lab, share) => `${named(lab, share)}: für den Grundstoff nehmen`,

    covering: "Wie viel das Top verdeckt",
  };
}
