import type { Advice, AdviceKind, BeforeWashing, Hue, Mend, Where } from "../engine/advice/index.ts";
import { boltText, type Names, sentence, type Voice } from "../words/index.ts";
import { unitName } from "./names.ts";
import { fabricNameOf, leftoverName } from "./steps.ts";

/** What it is about, in a few words. */
export const adviceTitles: { readonly [K in AdviceKind]: string } = {
  contrast: "Wie gut sich die Stoffe voneinander abheben",
  bleeding: "Farben, die auslaufen können",
  unwashed: "Gewaschen neben ungewaschen",
  weights: "Stoffe von verschiedener Schwere",
  "dark-beside-light": "Dunkel neben blass",
  "dark-under-top": "Dunkles unter dem Top",
  "not-upright": "Drucke, die nicht aufrecht stehen",
  "stripes-sideways": "Gestreiftes in beiden Richtungen",
  "print-cut-off": "Drucke an der Kante des Tops",
  "load-sideways": "Lange Nähte von oben nach unten",
};

/** What is so, then what to do. */
export function adviceText(advice: Advice, names: Names, voice: Voice): string {
  switch (advice.kind) {
    case "contrast":
      return contrastText(advice, names, voice);
    case "bleeding":
      return bleedingText(advice.small);
    case "unwashed":
      return unwashedText(advice.bought, advice.where, { names, voice });
    case "weights":
      return weightsText(advice.cloths, voice);
    case "dark-beside-light":
      return "Eine dunkle Nahtzugabe scheint durch blassen Stoff. Bügle diese Nähte zur dunklen Seite. Wo ein Schritt sagt, dass du auseinanderbügeln sollst, schneide die dunkle Zugabe etwas schmaler als die blasse.";
    case "dark-under-top":
      return underTopText(advice.pale, voice);
    case "not-upright":
      return "Ein Druck, der ein Oben hat, liegt hier auf der Seite oder auf dem Kopf. Stört es dich, lass ihn mit einem Stück ohne Oben den Platz tauschen.";
    case "stripes-sideways":
      return "Die meisten Streifenmuster laufen in eine Richtung, diese in die andere. Hättest du sie lieber gleich, lass eines davon mit einem anderen Stück den Platz tauschen.";
    case "print-cut-off":
      return "Die Kante des Tops läuft durch einen Druck, der ein Oben hat, und was außen liegt, wird nach dem Quilten abgeschnitten. Würde er dir fehlen, heb das Stück für einen Platz weiter innen auf.";
    case "load-sideways":
      return "Die meisten langen Nähte dieser Rückseite laufen von oben nach unten, und auf dem Longarm-Rahmen käme ihre Dicke an einer Stelle der Walzen zusammen. Spann sie quer ein, und das Top mit ihr, damit die Nähte an den Walzen entlang liegen; frag, ob der Rahmen dafür breit genug ist.";
  }
}

function underTopText(pale: number | null, { percent }: Voice): string {
  const where =
    pale === null
      ? "Wo das Top blass ist, kann dunkler Stoff darunter"
      : `Etwa ${percent(pale)} des Tops sind auf seinem Foto blass, und „Unter dem Top“ in der Zeichnung zeigt, wo. Dunkler Stoff unter so einer Stelle kann`;
  return `${where} durch dünnes oder weißes Vlies scheinen. Leg vor dem Nähen ein dunkles Stück unter das Top und sieh nach. Scheint es durch, nimm ein dickeres Vlies, oder lass das Stück mit einem blasseren den Platz tauschen.`;
}

type ContrastAdvice = Extract<Advice, { readonly kind: "contrast" }>;

function contrastText({ now, swapped, most, mend }: ContrastAdvice, names: Names, voice: Voice): string {
  const { percent } = voice;
  const is = `An ${percent(now)} der Nähte zwischen den Stoffen kann man sie gut unterscheiden.`;
  const swaps =
    percent(swapped) === percent(now)
      ? "Gleich große Stücke tauschen zu lassen, brächte nichts."
      : `Wenn gleich große Stücke die Plätze tauschen, können es ${percent(swapped)} werden.`;
  const limit =
    percent(most) === percent(swapped) || most >= 0.97
      ? ""
      : ` Mehr als ${percent(most)} geben diese Stücke nicht her.`;
  const mending =
    mend === null
      ? "Ein Stoff mehr würde wenig ändern. Ist es dir zu ruhig, lass einige der Stoffe weg, die einander am ähnlichsten sind."
      : mendText(mend, names, voice);
  return `${is} ${swaps}${limit} ${mending}`;
}

function mendText({ instead, value, hue, reach, cells, length, width }: Mend, names: Names, voice: Voice) {
  const cloth = `Ein Stoff in ${valueNames[value]} ${hueNames[hue]}`;
  const bolt = `${boltText(length, voice)}, ${voice.length(width)} breit`;
  return instead === "plain"
    ? `${cloth} anstelle von ${fabricNameOf("plain", names)} brächte es auf ${voice.percent(reach)}; du brauchst davon genauso viel, ${bolt}.`
    : `${cloth} anstelle von ${voice.count(cells, "Stück", "Stücken")} brächte es auf ${voice.percent(reach)}; ${bolt}, reicht.`;
}

const valueNames: { readonly [V in Mend["value"]]: string } = {
  light: "hellem",
  medium: "mittlerem",
  dark: "dunklem",
};

const hueNames: { readonly [H in Hue]: string } = {
  grey: "Grau",
  red: "Rot",
  orange: "Orange",
  yellow: "Gelb",
  green: "Grün",
  teal: "Petrol",
  blue: "Blau",
  violet: "Violett",
  pink: "Rosa",
};

function bleedingText(small: boolean): string {
  const then = small
    ? "halte diesen Stoff von blassem fern oder lass ihn weg, denn so kleine Stücke fransen beim Waschen aus."
    : "wasch diesen Stoff vor dem Zuschneiden so, wie sein Hersteller es angibt.";
  return `Kräftiges Rot und tiefe Farben können auslaufen. Drück ein feuchtes weißes Tuch auf einen Rest von jedem; färbt es sich, ${then} Wasch den fertigen Quilt beim ersten Mal mit einem Farbfangtuch.`;
}

type Said = { readonly names: Names; readonly voice: Voice };

function unwashedText(bought: readonly BeforeWashing[], { pieces }: Where, { names, voice }: Said): string {
  const is = `Hier wird gewaschener Stoff an ungewaschenen genäht. Der ungewaschene kann bei seiner ersten Wäsche um bis zu ${voice.percent(0.05)} eingehen, und die Naht kräuselt sich.`;
  const ofBought = bought.map(
    ({ fabric, length }) =>
      `Wasch ${fabricNameOf(fabric, names)} vor dem Zuschneiden, und kauf dafür ${boltText(length, voice)}.`,
  );
  const ofPieces =
    pieces.length === 0
      ? []
      : [
          "Wasch große ungewaschene Stücke zuerst so, wie ihr Hersteller es angibt; kleine bügelst du vor dem Zuschneiden mit Dampf.",
        ];
  return [is, ...ofBought, ...ofPieces].join(" ");
}

function weightsText(cloths: readonly string[], { list }: Voice): string {
  const what =
    cloths.length === 0
      ? "Hier werden Stoffe von verschiedener Schwere aneinandergenäht."
      : `Hier wird an anders schweren Stoff genäht: ${list(cloths)}.`;
  return `${what} Probier zuerst eine Naht an zwei Resten. Näh mit dem schwereren Stoff unten und etwas längerem Stich, und bügle so heiß, wie der feinere es verträgt.`;
}

const mostNamed = { pieces: 5, units: 12 } as const;

/** Which leftovers it concerns, and at which steps one meets it; null: there is nothing to name. */
export function adviceWhere({ where }: Advice, names: Names, voice: Voice): string | null {
  const pieces = shortList(where.pieces, mostNamed.pieces, (id) => leftoverName(id, names), voice);
  const units = unitsText(where.steps, voice);
  const said = [pieces, units].filter((text) => text !== "");
  return said.length === 0 ? null : `${sentence(said.join("; "))}.`;
}

function unitsText(steps: readonly string[], voice: Voice): string {
  const [first = ""] = steps;
  if (steps.length < 2) return first === "" ? "" : unitName(first);
  return `Einheiten ${shortList(steps, mostNamed.units, (step) => unitName(step).replace(/^Einheit /, ""), voice)}`;
}

function shortList(ids: readonly string[], most: number, name: (id: string) => string, voice: Voice): string {
  const named = ids.slice(0, most).map(name);
  const more = ids.length - named.length;
  if (named.length === 0) return "";
  return voice.list(more === 0 ? named : [...named, voice.count(more, "anderes", "andere")]);
}
