import { type Step, type StepPart, takenSize } from "../engine/sewing/index.ts";
import {
  isCutToMeasure,
  type Names,
  type SewingPart,
  type SewTexts,
  seamless,
  sentence,
  type Voice,
} from "../words/index.ts";
import { patternName, unitName } from "./names.ts";
import { cautionText } from "./plan.ts";
import {
  fittingText,
  leftLongText,
  measureFirst,
  onPointText,
  partName,
  pinText,
  pressText,
  resultText,
  turnText,
} from "./steps.ts";

export function sew(voice: Voice): SewTexts {
  return {
    title: "Nähen",
    noPlan: "Noch behältst du keinen Plan",
    noPlanWhat: "Behalte einen Plan, dann stehen hier seine Schritte, einer nach dem anderen.",
    toPlan: "Zum Plan",
    unreadable: "Der Plan, den du behalten hast, lässt sich nicht mehr lesen. Mach einen anderen.",
    changedSince:
      "Seit du diesen Plan behalten hast, haben sich Reste oder Maße geändert. Diese Schritte gehören zum Plan, wie du ihn behalten hast.",
    ...progressTexts(voice),
    ...listTexts(voice),
    ...stepTexts(voice),
    done: "Fertig, nächster Schritt",
    doneLast: "Fertig",
    notDone: "Doch nicht fertig",
    back: "Schritt davor",
    next: "Schritt danach",
    isDone: "Fertig.",
    all: "Alle Schritte",
    jumpToNext: "Nächster offener Schritt",
  };
}

function progressTexts(voice: Voice) {
  return {
    stepOf: (number: number, steps: number) => `Schritt ${voice.number(number)} von ${voice.number(steps)}`,
    progress: (done: number, steps: number) =>
      done === 0
        ? `${voice.count(steps, "Schritt", "Schritte")} zu nähen.`
        : `${voice.number(done)} von ${voice.count(steps, "Schritt", "Schritten")} fertig.`,
    allDone: "Die Rückseite ist genäht.",
    allDoneWhat:
      "Jeder Schritt ist abgehakt. Bügle sie noch einmal ganz, bevor sie eingespannt oder geheftet wird.",
    part: (part: SewingPart) => sewingPartText(part, voice),
    partState: (done: number, steps: number) => {
      if (done === steps) return "fertig";
      return done === 0
        ? voice.count(steps, "Schritt", "Schritte")
        : `${voice.number(done)} von ${voice.count(steps, "Schritt", "Schritten")} fertig`;
    },
  };
}

function listTexts(voice: Voice) {
  return {
    waits: (steps: readonly Step[]) => waitsText(steps, voice),
    isDoneInList: "fertig",
    waitsInList: (steps: readonly Step[]) =>
      steps.length > 2
        ? `nach ${voice.number(steps.length)} anderen Einheiten`
        : `nach ${unitsText(steps, voice)}`,
    goTo: ({ id }: Step) => `Zu ${unitName(id)}`,
    inList: inListText,
    tickOf: (step: Step, names: Names) => `${inListText(step, names)} ist fertig`,
    measures: ({ unfinished }: Step) => voice.size(unfinished),
  };
}

function stepTexts(voice: Voice) {
  return {
    makes: (step: Step, names: Names) =>
      isBack(step, names) ? "Das wird die Rückseite" : `Das wird ${unitName(step.id)}`,
    lay: layText,
    partCount: ({ count }: StepPart) => (count === 1 ? "" : `${voice.number(count)} ×`),
    partSize: (part: StepPart) => voice.size(takenSize(part)),
    partWhat: (part: StepPart, names: Names) => partWhat(part, names, voice),
    measureFirst: (step: Step) => (isCutToMeasure(step) ? measureFirst(step) : null),
    sewing: (step: Step, names: Names) => sewingText(step, names, voice),
    press: ({ press }: Step) => pressText(press),
    result: (step: Step, names: Names) => resultText(step, isBack(step, names), voice),
    whereItGoes: "Wo es hinkommt, von hinten gesehen",
    placeOf: ({ id }: Step) => `Zeichnung der Rückseite, von hinten gesehen, ${unitName(id)} eingerahmt.`,
    drawingOf: (step: Step, names: Names) =>
      `Zeichnung der Teile, wie sie ausgelegt werden: ${isBack(step, names) ? "die Rückseite" : unitName(step.id)}.`,
    caution: cautionText,
  };
}

function sewingPartText(part: SewingPart, voice: Voice): string {
  switch (part.kind) {
    case "units":
      return "Einheiten und Schnipselblöcke";
    case "section":
      return `Abschnitt ${voice.number(part.number)}`;
    case "together":
      return "Abschnitte aneinander";
  }
}

function waitsText(steps: readonly Step[], voice: Voice): string {
  const are = voice.isOne(steps.length) ? "ist" : "sind";
  return `Dieser Schritt braucht ${unitsText(steps, voice)}, und die ${are} noch nicht fertig. Näh sie zuerst.`;
}

function unitsText(steps: readonly Step[], voice: Voice): string {
  return voice.list(steps.map(({ id }) => unitName(id)));
}

function isBack(step: Step, { steps = [] }: Names): boolean {
  return steps.at(-1)?.id === step.id;
}

function layText(step: Step): string {
  if (seamless(step)) return "Nimm";
  switch (step.kind) {
    case "join":
      return step.direction === "beside" ? "Leg von links nach rechts aus" : "Leg von oben nach unten aus";
    case "unit":
      return `Nimm für: ${patternName(step.pattern ?? "unit")}`;
    case "slab":
      return "Nimm für einen Schnipselblock";
  }
}

/** Its name and how it lies. The number stands before the size already. */
function partWhat(part: StepPart, names: Names, voice: Voice): string {
  const name = partName({ ...part, count: 1 }, names, voice);
  const lies = "piece" in part ? turnText(part) : "";
  return sentence([`${name}${lies}`, ...leftLongText(part.leftLong ?? {}, voice)].join(", "));
}

function sewingText(step: Step, names: Names, voice: Voice): string {
  if (seamless(step)) return "In diesem Schritt wird nichts genäht.";
  const seam = voice.length(step.seam);
  switch (step.kind) {
    case "join":
      return [
        `Näh sie mit ${seam} Nahtzugabe zusammen.`,
        ...pinText(step),
        ...fittingText(step, names, voice),
      ].join(" ");
    case "unit":
      return [
        ...onPointText(step, voice),
        `Näh sie mit ${seam} Nahtzugabe zusammen, wie die Zeichnung es zeigt: ${patternName(step.pattern ?? "unit")}.`,
      ].join(" ");
    case "slab":
      return "Näh sie nach Augenmaß, Schnipsel an Schnipsel, und bügle zwischendurch.";
  }
}

function inListText(step: Step, names: Names): string {
  return isBack(step, names) ? "Die Rückseite" : unitName(step.id);
}
