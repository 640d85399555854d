import type { Press, Step, StepPart } from "../../engine/sewing/index.ts";
import type { Names } from "../types.ts";
import { quoted, sentence, type Voice } from "../voice.ts";
import { patternName, pieceName, roleNames, unitName } from "./names.ts";

/** One step, from what is laid out to what comes off the ironing board. */
export function stepText(step: Step, names: Names, voice: Voice): string {
  const parts = step.from.map((part) => partText(part, names, voice));
  const isAlone = step.from.length === 1 && step.from[0]?.count === 1 && step.kind === "join";
  if (isAlone) return [`Take ${parts.join("; ")}.`, resultText(step, voice)].join(" ");
  const sewing = [`${howSewn(step, voice)} ${parts.join("; ")}.`];
  return [
    ...sewing,
    `Seam ${voice.length(step.seam)}.`,
    pressText(step.press, voice),
    resultText(step, voice),
  ].join(" ");
}

function howSewn(step: Step, voice: Voice): string {
  switch (step.kind) {
    case "join":
      return `${joinedAs(step, voice)}${orderText(step)}:`;
    case "unit":
      return `Sew ${withArticle(patternName(step.pattern ?? "unit"))}, its parts turned as the drawing shows, from`;
    case "slab":
      return "Sew a slab by eye, bit to bit, and press as you go:";
  }
}

function joinedAs(step: Step, voice: Voice): string {
  const count = step.from.reduce((total, part) => total + part.count, 0);
  const set = step.pattern === undefined ? "" : ` into ${withArticle(patternName(step.pattern))}`;
  return `Sew ${voice.count(count, "part", "parts")} together${set}, `;
}

function orderText({ direction }: Step): string {
  return direction === "beside"
    ? "side by side from left to right"
    : "one below the other from top to bottom";
}

function withArticle(name: string): string {
  if (name.endsWith("s") || name.startsWith("broken")) return name;
  return /^[aeiou]/.test(name) ? `an ${name}` : `a ${name}`;
}

/** One thing that is laid: how many, which, from what, how it lies and how large it is cut. */
export function partText(part: StepPart, names: Names, voice: Voice): string {
  const size = voice.size(part);
  const each = part.count > 1 ? `, ${size} each` : `, ${size}`;
  if ("step" in part) return `${unitName(part.step)}${each}`;
  if ("cloth" in part) return `${clothText(part, names, voice)}${each}`;
  const many = part.count > 1 ? `${voice.number(part.count)} of ` : "";
  const copy = part.copy === undefined ? "" : ` number ${voice.number(part.copy)},`;
  const from = fabricOf(part.piece, names);
  return `${many}${pieceName(part.piece)}${from}${copy}${each}${turnText(part)}`.replace(",,", ",");
}

function fabricOf(pieceId: string, { pieces, fabrics }: Names): string {
  const piece = pieces.find(({ id }) => id === pieceId);
  const fabric = fabrics.find(({ id }) => id === piece?.fabric);
  const said = [fabric?.name ?? "", piece?.name ?? ""].filter((name) => name !== "");
  return said.length === 0 ? "" : ` (${said.map(plain).join(", ")})`;
}

/** Her own name for a thing, on one line and without signs that do not print. */
function plain(name: string): string {
  return quoted(name).slice(1, -1);
}

function clothText(part: Extract<StepPart, { readonly cloth: string }>, names: Names, voice: Voice): string {
  const fabric = names.fabrics.find(({ id }) => id === part.cloth);
  const role = part.count > 1 && part.role !== "plain" ? `${roleNames[part.role]}s` : roleNames[part.role];
  const many = part.count > 1 ? `${voice.number(part.count)} ` : "";
  const from = part.source === "buy" ? "" : ` from ${sourceText(part.source, names, voice)}`;
  return `${many}${role} of ${plain(fabric?.name ?? part.cloth)}${from}`;
}

type Source = { readonly piece: string; readonly copy: number };

/** The length it is cut from; which one, where she has several alike. */
function sourceText({ piece, copy }: Source, names: Names, voice: Voice): string {
  const several = (names.pieces.find(({ id }) => id === piece)?.count ?? 1) > 1;
  return several ? `${pieceName(piece)}, number ${voice.number(copy)}` : pieceName(piece);
}

const quarterTurns = {
  0: "",
  1: ", a quarter turn to the right",
  2: ", upside down",
  3: ", a quarter turn to the left",
} as const;

function turnText({ turned, quarter = 0 }: Extract<StepPart, { readonly piece: string }>): string {
  return `${turned === true ? ", turned on its side" : ""}${quarterTurns[quarter]}`;
}

export function pressText(press: Press, { trade }: Voice): string {
  switch (press) {
    case "open":
      return "Press the seams open.";
    case "to-one-side":
      return "Press the seams to one side.";
    case "to-the-plain":
      return "Press the seams towards the plain cloth.";
    case "away-from-centre":
      return `Press the seams away from the ${trade.centre}.`;
  }
}

function resultText({ squareUp, unfinished, finished }: Step, voice: Voice): string {
  const shows = `it shows ${voice.size(finished)} once it is sewn in`;
  if (squareUp === undefined) return `${sentence(`it measures ${voice.size(unfinished)}`)}; ${shows}.`;
  return `Square it up to ${voice.size(squareUp)}; ${shows}.`;
}
