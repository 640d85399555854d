/**
 * Why a file cannot be read as a plan. `path` says where in it: `layout.parts[2].width`; empty for the whole file.
 */
export type PlanProblem = { readonly path: string } & (
  | { readonly kind: "file-too-large"; readonly most: number }
  | { readonly kind: "not-json" }
  /** JSON, but not one of ours: `format` does not say `verso-plan`. */
  | { readonly kind: "not-a-plan" }
  /** Written by a later Verso than this one. */
  | { readonly kind: "newer-version"; readonly version: number; readonly known: number }
  | { readonly kind: "missing" }
  | { readonly kind: "wrong-type"; readonly expected: PlanValueType }
  | { readonly kind: "not-one-of"; readonly choices: readonly (string | number)[] }
  /** No ruler shows it: more than a millionth of the unit off any whole 1/320 mm. */
  | { readonly kind: "not-a-length"; readonly value: number }
  /** `least` and `most` in the file's own unit. */
  | { readonly kind: "out-of-range"; readonly value: number; readonly least: number; readonly most: number }
  | { readonly kind: "text-too-long"; readonly most: number }
  | { readonly kind: "too-many"; readonly most: number }
  | { readonly kind: "too-deep"; readonly most: number }
  /** The same name for two rows, fabrics or steps. */
  | { readonly kind: "twice"; readonly id: string }
  /** A part of a step that is neither a piece, a step nor cloth, or is more than one of them. */
  | { readonly kind: "not-one-source" }
  /** The list ends here; the rest of the file may hold more of them. */
  | { readonly kind: "more-problems" }
);

export const planValueTypes = ["object", "list", "text", "number", "whole-number", "yes-or-no"] as const;
export type PlanValueType = (typeof planValueTypes)[number];
