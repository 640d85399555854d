import type { ViewTexts, Voice } from "../words/index.ts";

export function views({ number, count }: Voice): ViewTexts {
  return {
    view: "Was die Zeichnung zeigt",
    views: {
      cloth: "Dein Stoff",
      colour: "Farbe",
      value: "Hell und dunkel",
      seams: "Nähte",
      "to-go": "Was noch zu nähen ist",
      "through-top": "Unter dem Top",
    },
    viewIs: {
      cloth:
        "Von hinten gesehen, wie du sie zum Nähen auslegst: fotografierter Stoff, wie sein Foto ihn zeigt, der Rest in seiner Farbe.",
      colour: "Von hinten gesehen, wie du sie zum Nähen auslegst.",
      value: "Von hinten gesehen: wie hell oder dunkel jeder Stoff ist, ohne seine Farbe.",
      seams: "Von hinten gesehen: nur die Nähte.",
      "to-go":
        "Von hinten gesehen: was genäht ist, in seiner Farbe; was noch zu nähen ist, blass und mit der Nummer des Schrittes, der es als erster näht.",
      "through-top":
        "Von vorn gesehen, wie durch das eingerahmte Top hindurch: Links und rechts sind vertauscht. Sieh hier nach, dass kein liebes Stück abgeschnitten wird.",
    },
    sewn: (done, all) => `Bisher genäht: ${number(done)} von ${count(all, "Schritt", "Schritten")}.`,
    listToGo: "Was noch zu nähen ist, als Liste",
    size: "Größe der Zeichnung",
    larger: "Größer",
    smaller: "Kleiner",
    whole: "Ganz",
    enlarged:
      "Die Zeichnung, vergrößert. Die Pfeiltasten bewegen sie; plus, minus und null ändern ihre Größe.",
  };
}
