import type { PlanProblem } from "./plan-problems.ts";

/**
 * Why a file cannot be read as a project. `path` says where in it: `leftovers[2].cells.width`; empty for the whole
 * file.
 */
export type ProjectProblem = { readonly path: string } & (
  | { readonly kind: "file-too-large"; readonly most: number }
  /** No zip, or one that breaks off. */
  | { readonly kind: "not-a-zip" }
  /** A zip, but not one of ours: no manifest, or its `format` does not say `verso-project`. */
  | { readonly kind: "not-a-project" }
  /** Made by a later Verso than this one. */
  | { readonly kind: "newer-version"; readonly version: number; readonly known: number }
  /** In the manifest and not in the zip. */
  | { readonly kind: "entry-missing"; readonly entry: string }
  /** In the zip and not in the manifest, or there twice. */
  | { readonly kind: "entry-unknown"; readonly entry: string }
  /** Its bytes are not the ones that were written. */
  | { readonly kind: "entry-damaged"; readonly entry: string }
  /** It would unpack to more than any project holds. */
  | { readonly kind: "entry-too-large"; readonly entry: string; readonly most: number }
  | { readonly kind: "not-json"; readonly entry: string }
  | { readonly kind: "missing" }
  | { readonly kind: "wrong-type"; readonly expected: ProjectValueType }
  | { readonly kind: "not-one-of"; readonly choices: readonly string[] }
  /** No ruler shows it: more than a millionth of the unit off any whole 1/320 mm. */
  | { readonly kind: "not-a-length"; readonly value: number }
  | { readonly kind: "out-of-range"; readonly value: number }
  | { readonly kind: "text-too-long"; readonly most: number }
  | { readonly kind: "too-many"; readonly most: number }
  /** The same id for two rows. */
  | { readonly kind: "twice"; readonly id: string }
  /** The kept plan is none. */
  | { readonly kind: "plan"; readonly problem: PlanProblem }
  /** The list ends here; the rest of the file may hold more of them. */
  | { readonly kind: "more-problems" }
);

export const projectValueTypes = ["object", "list", "text", "number", "whole-number", "yes-or-no"] as const;
export type ProjectValueType = (typeof projectValueTypes)[number];
