import type { Backing, CutOffEdge } from "../engine/back/index.ts";
import type { Method, Time } from "../engine/cloth/index.ts";
import type { Length } from "../engine/length/index.ts";
import { boltText, type OneCloth, type SizeTexts, sentence, type Voice } from "../words/index.ts";
import { draftProblem } from "./draftProblems.ts";
import { lengthProblem } from "./lengthProblems.ts";
import { quoted, unitNames } from "./measures.ts";
import { methodNames, timeNames } from "./names.ts";

export function size(voice: Voice): SizeTexts {
  return {
    title: "Maße",
    nameOfBack: "Name dieser Rückseite",

    from: "Wovon du ausgehst",
    fromTop: "Vom Top",
    fromBack: "Von der Größe der Rückseite",

    top: "Das Top",
    measureThrice:
      "Miss in jeder Richtung dreimal: Das größte Maß zählt, damit die Rückseite nie zu klein wird. Für den Anfang reicht eines.",
    widths: "Breite",
    heights: "Höhe",
    places,
    measureOf: (side, place) => `${side === "width" ? "Breite" : "Höhe"}, ${places[side][place]}`,
    differ: (side, by) =>
      `Die ${side === "width" ? "Breiten" : "Höhen"} unterscheiden sich um ${voice.length(by)}. Die Rückseite richtet sich nach der größten.`,

    ...methodTexts(voice),

    unit: "Einheit",
    units: unitNames,
    time: "Zeit, die du dir dafür nimmst",
    times: (time) => sentence(timeNames[time]),
    timeWhat: (time) => timeWhats[time],

    back: "Die Rückseite",
    side: voice.length,
    backIs: (back) => `${voice.size(back)}, von Schnittkante zu Schnittkante.`,
    cutOffIs: (edge) => cutOffText(edge, voice),
    notMeasured: "Gib die Maße des Tops an, dann wird die Rückseite hier gezeichnet.",
    topOnDrawing: (top) => `das Top, ${voice.size(top)}`,

    ...clothTexts(voice),

    goOn: "Weiter zu deinen Resten",
    eighths: "Achtel-Inch",
    jobProblem: (problem) => draftProblem(problem, voice),
    problem: (problem) =>
      isTwoSides(problem.text)
        ? `${quoted(problem.text)} sind zwei Seiten. Schreib eine davon hierher und die andere an ihren Platz.`
        : sentence(lengthProblem(problem)),
    meant: (reading) => `Es sind ${reading}`,
  };
}

const places: SizeTexts["places"] = {
  width: ["Obere Kante", "Mitte", "Untere Kante"],
  height: ["Linke Kante", "Mitte", "Rechte Kante"],
};

const timeWhats: { readonly [T in Time]: string } = {
  afternoon: "Wenige Nähte, viel Grundstoff.",
  weekend: "Ein guter Teil gepatcht.",
  any: "So viel gepatcht, wie deine Reste hergeben.",
};

function methodTexts(voice: Voice) {
  return {
    method: "Wie gequiltet wird",
    methods: (method: Method) => sentence(methodNames[method]),
    methodTakes: (extra: Length) => `An jeder Seite ${voice.length(extra)} mehr.`,
    extra: "Zugabe an jeder Seite",
    extraUsual: (extra: Length) => `Bleibt es leer, sind es ${voice.length(extra)}, wie üblich.`,
    extraAsked: "Wer für dich quiltet, verlangt eine eigene Zugabe, darum zählt diese hier nicht.",

    asks: "Wer für dich quiltet, verlangt etwas anderes",
    asksWhat: "Jede Werkstatt und jede Maschine ist anders. Was hier steht, geht allem anderen vor.",
    asksExtra: "Zugabe an jeder Seite",
    asksWidth: "Breite, mindestens",
    asksHeight: "Höhe, mindestens",
    ownSize: "Oder mach die Rückseite genau so groß",
    ownWidth: "Breite der Rückseite",
    ownHeight: "Höhe der Rückseite",
  };
}

function clothTexts(voice: Voice) {
  return {
    cloth: "Grundstoff, den du kaufen würdest",
    clothName: "Wie er heißt",
    clothColour: "Seine Farbe",
    clothWhat: "Er füllt, was die Reste nicht bedecken.",
    clothWidth: "Nutzbare Breite",
    clothWidthUsual: (width: Length) =>
      `Zwischen den Webkanten. Bleibt es leer, sind es ${voice.length(width)}.`,
    oneCloth: "Alles aus einem Stoff, zum Vergleich",
    backings: (cloth: OneCloth) => backingTexts(cloth, voice),
  };
}

function cutOffText({ width, height }: CutOffEdge, voice: Voice): string {
  const rest = "werden nach dem Quilten abgeschnitten. Lass dort nichts Kleines und Kostbares liegen.";
  if (width === height) return `An jeder Seite ${voice.length(width)} ${rest}`;
  return `Links und rechts ${voice.length(width)}, oben und unten ${voice.length(height)} ${rest}`;
}

function backingTexts({ clothWidth, vertical, horizontal, wide }: OneCloth, voice: Voice): readonly string[] {
  const wideText =
    wide === null
      ? "Überbreiter Rückseitenstoff ist für diese Rückseite am Stück zu schmal."
      : `Überbreiter Rückseitenstoff, ${voice.length(wide.width)}, ohne Naht: ${boltText(wide.buy, voice)}.`;
  const least = horizontal.buy < vertical.buy ? horizontal : vertical;
  const ways = vertical.widths === 1 || horizontal.widths === 1 ? [least] : [vertical, horizontal];
  return [...ways.map((backing) => backingText(backing, clothWidth, voice)), wideText];
}

function backingText({ seams, widths, each, buy }: Backing, clothWidth: Length, voice: Voice): string {
  const how = widths === 1 ? "ohne Naht" : seams === "vertical" ? "Nähte längs" : "Nähte quer";
  const lengths = `${voice.count(widths, "Bahn", "Bahnen")} zu ${voice.length(each)}`;
  return `Stoff ${voice.length(clothWidth)} breit, ${how}: ${lengths}, zusammen ${boltText(buy, voice)}.`;
}

/** `130 x 150` in the place of one side. */
function isTwoSides(text: string): boolean {
  return /\d.*(?:[x×]|\bmal\b).*\d/i.test(text);
}
