import type { Style } from "../engine/back/index.ts";
import type { Paper } from "../engine/cards/index.ts";
import type { Contrast, Method, Time, WishAsked } from "../engine/cloth/index.ts";
import type { DisplayUnit, Length, Size } from "../engine/length/index.ts";
import type { CommandName } from "../words/index.ts";

/** What she asked for, understood and complete. Files are as she wrote them; `-` is standard input or output. */
export type Command = HelpCommand | SizeCommand | PlanCommand | CheckCommand | CardsCommand | MeasureCommand;

export type HelpCommand = { readonly kind: "help"; readonly about: CommandName | null };

export type SizeCommand = {
  readonly kind: "size";
  readonly unit: DisplayUnit;
  readonly top: Size;
  readonly method: Method;
  /** null: what the method asks for. */
  readonly extra: Length | null;
};

export type PlanCommand = {
  readonly kind: "plan";
  readonly leftovers: string;
  readonly unit: DisplayUnit;
  /** null: the leftovers are a project, which has a size of its own. */
  readonly size: { readonly top: Size; readonly method: Method } | { readonly back: Size } | null;
  /** null: the best for the heap. */
  readonly style: Style | "all" | null;
  readonly time: Time | null;
  readonly wishes: readonly WishAsked[];
  /** null: mixed, or strong where she wishes for more contrast. */
  readonly contrast: Contrast | null;
  readonly floor: Length | null;
  readonly step: Length | null;
  readonly limit: Limit;
  readonly seed: number;
  readonly plans: number;
  readonly skipBadRows: boolean;
  readonly json: string | null;
  readonly svg: string | null;
};

/** When to stop: seconds of processor time for all plans together, or a number of solver moves for each. */
export type Limit =
  | { readonly kind: "seconds"; readonly seconds: number }
  | { readonly kind: "effort"; readonly moves: number };

export type CheckCommand = { readonly kind: "check"; readonly plan: string };

export type CardsCommand = { readonly kind: "cards"; readonly paper: Paper; readonly pdf: string };

export type MeasureCommand = {
  readonly kind: "measure";
  readonly photos: readonly string[];
  /** What her ruler said of the check bar, and what it was meant to be; null: as meant. */
  readonly bar: { readonly measured: Length; readonly meant: Length } | null;
  readonly json: string | null;
  readonly csv: string | null;
  /** A picture of the photo with the outlines over it; of several photos it is numbered. */
  readonly overlay: string | null;
};

/** A project's file, by its name. */
export function isProject(file: string): boolean {
  return /\.verso$/i.test(file);
}

/** A file's place, or standard input or output. */
export const standardStream = "-";
