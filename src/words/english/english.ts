import type { DisplayUnit } from "../../engine/length/index.ts";
import type { CliLocale } from "../locales.ts";
import { boltText, timeText, voiceOf } from "../measures.ts";
import type { TradeWords } from "../trade.ts";
import type { Words } from "../types.ts";
import { adviceLine } from "./advice.ts";
import { choiceNoteText, reasonsText } from "./choice.ts";
import { draftProblem } from "./draftProblems.ts";
import { layoutProblem } from "./layoutProblems.ts";
import { lengthProblem, sizeProblem } from "./lengthProblems.ts";
import {
  directionNames,
  grainNames,
  keepNames,
  kindName,
  methodName,
  patternName,
  pieceName,
  placeName,
  roleNames,
  styleName,
  styleSentence,
  timeNames,
  unitName,
  useNames,
} from "./names.ts";
import { buyText, cautionText, figureLines, unusedText, usableText } from "./plan.ts";
import { planProblem } from "./planProblems.ts";
import { partText, pressText, stepText } from "./steps.ts";
import { tableProblem } from "./tableProblems.ts";

/** English, in one country's trade words and one unit. */
export function english(locale: CliLocale, trade: TradeWords, unit: DisplayUnit): Words {
  const voice = voiceOf(trade, unit);
  const { length, size, area, number, percent } = voice;
  return {
    locale,
    length,
    size,
    area,
    number,
    percent,
    bolt: (cloth) => boltText(cloth, voice),
    time: (minutes) => timeText(minutes, voice),
    kind: (kind, count) => kindName(kind, count, voice),
    style: (style) => styleName(style, voice),
    use: (use) => useNames[use],
    keep: (keep) => keepNames[keep],
    direction: (direction) => directionNames[direction],
    grain: (grain) => grainNames[grain],
    method: (method) => methodName(method, voice),
    timeGiven: (time) => timeNames[time],
    role: (role) => roleNames[role],
    pattern: patternName,
    batting: () => trade.batting,
    muslin: () => trade.muslin,
    selvage: () => trade.selvage,
    piece: pieceName,
    unit: unitName,
    place: placeName,
    styleIs: (style) => styleSentence(style, voice),
    press: (press) => pressText(press, voice),
    step: (step, names) => stepText(step, names, voice),
    stepPart: (part, names) => partText(part, names, voice),
    buy: (row, names) => buyText(row, names, voice),
    figures: (figures) => figureLines(figures, voice),
    usable: (usable) => usableText(usable, voice),
    unused: (unused) => unusedText(unused, voice),
    reasons: (reasons) => reasonsText(reasons, voice),
    choiceNote: (note) => choiceNoteText(note, voice),
    advice: (advice, names) => adviceLine(advice, names, voice),
    caution: (caution) => cautionText(caution, voice),
    tableProblem: (problem) => tableProblem(problem, voice),
    draftProblem: (problem) => draftProblem(problem, voice),
    lengthProblem,
    sizeProblem,
    layoutProblem: (problem, layout) => layoutProblem(problem, layout, voice),
    planProblem: (problem) => planProblem(problem, voice),
  };
}
