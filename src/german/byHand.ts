import type { Edit, LayoutProblem, Shift } from "../engine/layout/index.ts";
import { length } from "../engine/length/index.ts";
import type { Refusal } from "../engine/plan/index.ts";
import { type HandTexts, type Names, sentence, type Voice } from "../words/index.ts";
import { lengthProblem } from "./lengthProblems.ts";
import { fabricNameOf, leftoverName } from "./steps.ts";

type Said = { readonly names: Names; readonly voice: Voice };

export function hand(voice: Voice): HandTexts {
  return {
    swap: "Mit einem anderen tauschen",
    swapHow: "Mit welchem? Tipp es in der Zeichnung an, oder wähl es hier.",
    noPartner: "Nichts anderes in diesem Plan passt hierher und könnte seinen Platz nehmen.",
    turn: "Drehen",
    makePlain: "Hier Grundstoff",
    otherCloth: "Hier anderer Stoff",
    placeAndSize: "Platz und Größe",
    whichPart: "Was?",
    byHowMuch: "Um wie viel?",
    move: { left: "Nach links", right: "Nach rechts", up: "Nach oben", down: "Nach unten" },
    become: { narrower: "Schmaler", wider: "Breiter", shorter: "Niedriger", taller: "Höher" },
    size: { width: "Breite, wenn genäht", height: "Höhe, wenn genäht" },
    makeItSo: "So machen",
    problem: (problem) => sentence(lengthProblem(problem)),
    meant: (reading) => `Es sind ${reading}`,
    made: (edit, names) => madeText(edit, { names, voice }),
    whyNot: (refusal, names) => whyNotText(refusal, { names, voice }),
    changed: "Du hast diesen Plan von Hand geändert. Er lässt sich nähen, wie er ist.",
    takeBack: "Alle meine Änderungen zurücknehmen",
    changesAreOld:
      "Seit du einen Plan von Hand geändert hast, haben sich Reste oder Maße geändert, darum wird neu geplant. Rückgängig bringt deinen zurück.",
  };
}

function madeText(edit: Edit, { names, voice }: Said): string {
  switch (edit.kind) {
    case "swap":
      return "Beide haben die Plätze getauscht.";
    case "turn":
      return "Es ist gedreht.";
    case "make-plain":
      return "Hier liegt jetzt Grundstoff. Was hier lag, ist wieder bei deinen Resten.";
    case "put":
      return `${leftoverName(edit.piece.piece, names)} liegt jetzt hier.`;
    case "cloth":
      return `Dieser Teil ist jetzt aus ${fabricNameOf(edit.fabric, names)}.`;
    case "move":
      return `Es liegt jetzt ${sizeOf(edit, voice)} weiter ${sayShift(edit, moves)}.`;
    case "resize":
      return `Es ist jetzt ${sizeOf(edit, voice)} ${sayShift(edit, changes)}. Der Rest seiner ${edit.along === "width" ? "Reihe" : "Spalte"} gleicht es aus.`;
  }
}

const moves = { width: ["links", "rechts"], height: ["oben", "unten"] } as const;
const changes = { width: ["schmaler", "breiter"], height: ["niedriger", "höher"] } as const;

function sizeOf({ by }: Shift, voice: Voice): string {
  return voice.length(length(Math.abs(by)));
}

function sayShift({ along, by }: Shift, ways: typeof moves | typeof changes): string {
  return ways[along][by < 0 ? 0 : 1];
}

function whyNotText(refusal: Refusal, said: Said): string {
  switch (refusal.kind) {
    case "same":
      return "Es sähe genauso aus wie jetzt.";
    case "sewn":
      return "Es ist aus mehreren Stücken genäht und liegt so, wie es genäht ist.";
    case "another-size":
      return "Was schon genäht ist, behält seine Größe. Es kann mit etwas genau gleich Großem tauschen.";
    case "would-stretch":
      return `${leftoverName(refusal.piece, said.names)} würde sich am Rand der Rückseite dehnen: Sein Fadenlauf ist nicht bekannt oder läuft schräg. Lass es innen.`;
    case "too-little-cloth":
      return `Davon ist nicht genug da, neben allem, was sonst daraus geschnitten wird: ${fabricNameOf(refusal.fabric, said.names)}.`;
    case "off-ruler":
      return `Maße gehen hier in Schritten von ${said.voice.length(refusal.step)}, wie dein Lineal.`;
    case "at-the-end":
      return "Auf einer Seite liegt nichts, was geben oder nehmen könnte. Du kannst es mit dem tauschen, was auf der anderen liegt.";
    case "no-room":
      return refusal.most === 0
        ? "Was daneben liegt, kann nichts geben oder nehmen: Schmaler ließe es sich nicht nähen, oder es behält seine Größe."
        : `Was daneben liegt, kann höchstens ${said.voice.length(refusal.most)} geben oder nehmen.`;
    case "keeps-size":
      return refusal.most === 0
        ? "So kann es sich nicht ändern: Schmaler ließe es sich nicht nähen, oder woraus es genäht ist, ist nicht größer."
        : `Es kann sich um höchstens ${said.voice.length(refusal.most)} ändern, mehr gibt nicht her, woraus es genäht ist.`;
    case "cannot-be-sewn":
      return unsewableText(refusal.problem, said);
  }
}

function unsewableText(problem: LayoutProblem, { names, voice }: Said): string {
  const name = "piece" in problem && problem.piece !== undefined ? leftoverName(problem.piece, names) : "es";
  switch (problem.kind) {
    case "piece-too-small":
      return `${sentence(name)} ist für diesen Platz zu klein: Es hat ${voice.length(problem.has)}, und ${voice.length(problem.needed)} sind nötig.`;
    case "trimmed-too-much":
      return `${sentence(name)} ist für diesen Platz zu groß: ${voice.length(problem.trimmed)} würden abgeschnitten, und ${voice.length(problem.most)} sind das Höchste.`;
    case "not-whole":
      return `${sentence(name)} soll ganz bleiben und würde an diesem Platz beschnitten.`;
    case "one-way-turned":
      return `Der Druck hat ein Oben und läge auf der Seite: ${name}.`;
    case "copy-too-short":
      return `${sentence(name)} ist zu kurz dafür, neben allem, was sonst daraus geschnitten wird.`;
    case "used-too-often":
      return `Davon ist nichts mehr da, alles liegt in diesem Plan: ${name}.`;
    case "cloth-too-wide":
      return `Dafür müsste der Stoff ${voice.length(problem.needed)} breit sein, und deiner hat ${voice.length(problem.has)}.`;
    case "under-smallest":
      return "Es wäre zu schmal zum Nähen.";
    default:
      return "Es passt dort nicht.";
  }
}
