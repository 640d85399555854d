import type { Kind } from "../engine/cloth/index.ts";
import type { LengthProblem } from "../engine/length/index.ts";
import type { Column, WordColumn } from "./leftovers-columns.ts";

/** What a file looks like that is no table. */
export type OtherFile = "spreadsheet" | "zip" | "picture" | "pdf" | "something-else";

/** The whole file cannot be read; there is one of these and nothing else. */
export type FileProblem =
  | { readonly kind: "empty-file" }
  | { readonly kind: "not-a-table"; readonly looksLike: OtherFile }
  | { readonly kind: "file-too-large"; readonly bytes: number; readonly most: number }
  | { readonly kind: "too-many-rows"; readonly most: number }
  /** `headings`: what the first row says, as written. */
  | { readonly kind: "no-kind-column"; readonly headings: readonly string[] }
  | { readonly kind: "no-size-columns"; readonly headings: readonly string[] }
  | { readonly kind: "column-twice"; readonly field: Column; readonly headings: readonly string[] }
  | { readonly kind: "no-rows" };

/** What is wrong in a row. */
export type RowFault =
  | { readonly kind: "too-many-cells"; readonly cells: number; readonly headings: number }
  /** A quotation mark that opens and never closes, or closes inside its cell. */
  | { readonly kind: "stray-quote"; readonly text: string }
  | { readonly kind: "no-kind"; readonly field: "kind" }
  /** The table has no such column, and this kind of leftover needs it. Given once, for the first of `rows` rows. */
  | {
      readonly kind: "column-missing";
      readonly field: "width" | "height" | "area";
      readonly pieceKind: Kind;
      readonly rows: number;
    }
  | {
      readonly kind: "not-a-size";
      readonly field: "width" | "height" | "area" | "weight";
      readonly problem: LengthProblem;
    }
  | { readonly kind: "not-a-count"; readonly field: "count"; readonly text: string }
  | {
      readonly kind: "unknown-word";
      readonly field: WordColumn;
      readonly text: string;
      readonly known: readonly string[];
    }
  /** A letter that another program could not read, or a control character. */
  | { readonly kind: "unreadable-letter"; readonly field: Column; readonly text: string }
  | { readonly kind: "too-long"; readonly field: Column; readonly length: number; readonly most: number };

/** Numbered as a spreadsheet shows it: the headings are row 1. */
export type RowProblem = RowFault & { readonly row: number };

/** Why a leftovers table, or a row of it, was not read. */
export type TableProblem = FileProblem | RowProblem;
