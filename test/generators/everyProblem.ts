import type { DraftProblem } from "../../src/engine/cloth/index.ts";
import type { LayoutProblem } from "../../src/engine/layout/index.ts";
import {
  areaOf,
  finished,
  inches,
  type LengthProblem,
  type SizeProblem,
  unitsPerInch,
} from "../../src/engine/length/index.ts";
import type { PlanProblem, TableProblem } from "../../src/files/index.ts";

/** At least one of every kind: a new kind of problem does not compile until it stands here, and so has its text read. */
type EveryKind<P extends { readonly kind: string }> = {
  readonly [K in P["kind"]]: readonly [Extract<P, { kind: K }>, ...Extract<P, { kind: K }>[]];
};

function all<P extends { readonly kind: string }>(kinds: EveryKind<P>): readonly P[] {
  return Object.values<readonly P[]>(kinds).flat();
}

const small = inches(1, 2);
const large = inches(12);
const size = { width: inches(25, 2), height: inches(161, 8) };
const other = { width: inches(13), height: inches(20) };
const squareInches = (count: number) => areaOf(count * unitsPerInch ** 2);

const lengths: EveryKind<LengthProblem> = {
  empty: [{ kind: "empty", text: "" }],
  "not-a-number": [{ kind: "not-a-number", text: "abc" }],
  "other-digits": [{ kind: "other-digits", text: "٢" }],
  "unknown-unit": [{ kind: "unknown-unit", text: "2 furlongs", unit: "furlongs" }],
  "no-unit": [{ kind: "no-unit", text: "200" }],
  zero: [{ kind: "zero", text: "0" }],
  negative: [{ kind: "negative", text: "-2" }],
  "too-large": [{ kind: "too-large", text: "99999" }],
  ambiguous: [{ kind: "ambiguous", text: "1,500", readings: ["1.5", "1500"] }],
  date: [
    { kind: "date", text: "2-Jan", fraction: "1/2" },
    { kind: "date", text: "02. Mai", fraction: "2.5" },
    { kind: "date", text: "3-Jan", fraction: "1/3" },
    { kind: "date", text: "2-Feb", fraction: null },
  ],
};
export const lengthProblems = all<LengthProblem>(lengths);

const sizes: EveryKind<SizeProblem> = {
  "not-two-lengths": [{ kind: "not-two-lengths", text: "60" }],
  side: [{ kind: "side", side: "height", problem: { kind: "zero", text: "0" } }],
};
export const sizeProblems = all<SizeProblem>(sizes);

const tables: EveryKind<TableProblem> = {
  "empty-file": [{ kind: "empty-file" }],
  "not-a-table": [
    { kind: "not-a-table", looksLike: "spreadsheet" },
    { kind: "not-a-table", looksLike: "zip" },
    { kind: "not-a-table", looksLike: "picture" },
    { kind: "not-a-table", looksLike: "pdf" },
    { kind: "not-a-table", looksLike: "something-else" },
  ],
  "file-too-large": [{ kind: "file-too-large", bytes: 6_200_000, most: 5_000_000 }],
  "too-many-rows": [{ kind: "too-many-rows", most: 20_000 }],
  "no-kind-column": [
    { kind: "no-kind-column", headings: ["foo", "bar"] },
    { kind: "no-kind-column", headings: [] },
    { kind: "no-kind-column", headings: ["a", "b", "c", "d", "e", "f", "g"] },
  ],
  "no-size-columns": [{ kind: "no-size-columns", headings: ["kind"] }],
  "column-twice": [{ kind: "column-twice", field: "colour", headings: ["color", "colour"] }],
  "no-rows": [{ kind: "no-rows" }],
  "too-many-cells": [{ kind: "too-many-cells", row: 12, cells: 10, headings: 9 }],
  "stray-quote": [{ kind: "stray-quote", row: 12, text: 'strip,2,20,"teal' }],
  "no-kind": [{ kind: "no-kind", row: 12, field: "kind" }],
  "column-missing": [
    { kind: "column-missing", row: 2, field: "height", pieceKind: "strip", rows: 1 },
    { kind: "column-missing", row: 2, field: "area", pieceKind: "crumbs", rows: 3 },
  ],
  "not-a-size": [
    { kind: "not-a-size", row: 3, field: "area", problem: { kind: "not-a-number", text: "x" } },
    { kind: "not-a-size", row: 3, field: "weight", problem: { kind: "not-a-number", text: "x" } },
    ...lengthProblems.map((problem) => ({ kind: "not-a-size", row: 12, field: "width", problem }) as const),
  ],
  "not-a-count": [{ kind: "not-a-count", row: 12, field: "count", text: "three" }],
  "unknown-word": [{ kind: "unknown-word", row: 12, field: "washed", text: "maybe", known: ["yes", "no"] }],
  "unreadable-letter": [{ kind: "unreadable-letter", row: 1200, field: "colour", text: "gr\ufffdn" }],
  "too-long": [{ kind: "too-long", row: 12, field: "name", length: 1501, most: 500 }],
};
export const tableProblems = all<TableProblem>(tables);

const drafts: EveryKind<DraftProblem> = {
  "size-missing": [{ kind: "size-missing", severity: "stop", row: 4, field: "width" }],
  "size-zero": [{ kind: "size-zero", severity: "stop", row: 4, field: "width" }],
  "piece-too-large": [
    {
      kind: "piece-too-large",
      severity: "stop",
      row: 4,
      field: "height",
      size: inches(900),
      most: inches(400),
    },
  ],
  "narrower-than-seams": [
    {
      kind: "narrower-than-seams",
      severity: "note",
      row: 4,
      field: "width",
      size: inches(3, 8),
      seams: small,
    },
  ],
  "count-not-whole": [{ kind: "count-not-whole", severity: "stop", row: 4, field: "count", count: 2.5 }],
  "count-too-small": [{ kind: "count-too-small", severity: "stop", row: 4, field: "count", count: -2 }],
  "count-too-large": [
    { kind: "count-too-large", severity: "stop", row: 4, field: "count", count: 1e9, most: 5000 },
  ],
  "crumbs-counted": [{ kind: "crumbs-counted", severity: "stop", row: 4, field: "count", count: 3 }],
  "crumbs-without-amount": [{ kind: "crumbs-without-amount", severity: "stop", row: 4, field: "area" }],
  "amount-zero": [{ kind: "amount-zero", severity: "stop", row: 4, field: "weight" }],
  "amount-too-large": [
    { kind: "amount-too-large", severity: "stop", row: 4, field: "area", most: squareInches(160_000) },
  ],
  "area-and-weight": [{ kind: "area-and-weight", severity: "note", row: 4, field: "weight" }],
  "not-used": [
    { kind: "not-used", severity: "note", row: 4, field: "width" },
    { kind: "not-used", severity: "note", row: 4, field: "area" },
  ],
  "no-colour": [{ kind: "no-colour", severity: "note", row: 4, field: "colour" }],
  "unknown-colour": [{ kind: "unknown-colour", severity: "stop", row: 4, field: "colour", colour: "tael" }],
  "colour-conflict": [
    {
      kind: "colour-conflict",
      severity: "note",
      row: 4,
      field: "colour",
      fabric: "teal",
      colour: "#111",
      firstRow: 2,
      firstColour: "#222",
    },
  ],
  "grain-not-for-kind": [
    {
      kind: "grain-not-for-kind",
      severity: "stop",
      row: 4,
      field: "grain",
      grain: "legs",
      pieceKind: "strip",
    },
    {
      kind: "grain-not-for-kind",
      severity: "stop",
      row: 4,
      field: "grain",
      grain: "bias",
      pieceKind: "triangle",
    },
  ],
  "back-zero": [{ kind: "back-zero", severity: "stop", row: null, field: "back", side: "width" }],
  "back-too-small": [
    {
      kind: "back-too-small",
      severity: "stop",
      row: null,
      field: "back",
      side: "width",
      size: small,
      least: large,
    },
  ],
  "back-too-large": [
    {
      kind: "back-too-large",
      severity: "stop",
      row: null,
      field: "back",
      side: "width",
      size: inches(900),
      most: inches(400),
    },
  ],
  "back-off-step": [
    {
      kind: "back-off-step",
      severity: "note",
      row: null,
      field: "back",
      side: "width",
      size: inches(977, 16),
      made: inches(489, 8),
      step: inches(1, 8),
    },
  ],
  "top-zero": [{ kind: "top-zero", severity: "stop", row: null, field: "top", side: "height" }],
  "top-larger-than-back": [
    {
      kind: "top-larger-than-back",
      severity: "stop",
      row: null,
      field: "top",
      side: "width",
      top: inches(60),
      back: inches(58),
    },
  ],
  "back-short-of-extra": [
    {
      kind: "back-short-of-extra",
      severity: "note",
      row: null,
      field: "back",
      side: "width",
      back: inches(62),
      wanted: inches(68),
    },
  ],
  "extra-out-of-range": [
    {
      kind: "extra-out-of-range",
      severity: "stop",
      row: null,
      field: "top",
      size: inches(40),
      least: small,
      most: large,
    },
  ],
  "out-of-range": [
    {
      kind: "out-of-range",
      severity: "stop",
      row: null,
      field: "floor",
      size: inches(40),
      least: small,
      most: large,
    },
    {
      kind: "out-of-range",
      severity: "stop",
      row: null,
      field: "plainSeam",
      size: inches(40),
      least: small,
      most: large,
    },
  ],
  "unknown-plain-colour": [
    { kind: "unknown-plain-colour", severity: "stop", row: null, field: "plain", colour: "tael" },
  ],
  "too-many-pieces": [
    { kind: "too-many-pieces", severity: "stop", row: null, field: "pieces", total: 7000, most: 5000 },
  ],
  "nothing-to-plan": [{ kind: "nothing-to-plan", severity: "stop", row: null, field: "pieces" }],
};
export const draftProblems = all<DraftProblem>(drafts);

const at = { path: [2, 4] };
const strip = { ...at, piece: "strip-4" };

const layouts: EveryKind<LayoutProblem> = {
  "too-deep": [{ ...at, kind: "too-deep", most: 60 }],
  "too-many-cells": [{ path: [], kind: "too-many-cells", most: 5000 }],
  "layout-not-the-back": [{ path: [], kind: "layout-not-the-back", expected: size, actual: other }],
  "too-few-parts": [{ ...at, kind: "too-few-parts", parts: 1 }],
  "parts-do-not-add-up": [
    { ...at, kind: "parts-do-not-add-up", direction: "beside", expected: large, actual: small },
  ],
  "edges-not-equal": [{ ...at, kind: "edges-not-equal", side: "height", expected: large, actual: small }],
  "join-not-flattened": [{ ...at, kind: "join-not-flattened", direction: "below" }],
  "wrong-seam": [{ ...at, kind: "wrong-seam", expected: inches(1, 4), actual: small }],
  "size-not-positive": [{ ...at, kind: "size-not-positive", actual: size }],
  "off-step": [
    { ...strip, kind: "off-step", side: "width", size: finished(inches(33, 16)), step: inches(1, 8) },
    { ...at, kind: "off-step", side: "width", size: finished(inches(33, 16)), step: inches(1, 8) },
  ],
  "under-smallest": [
    { ...strip, kind: "under-smallest", side: "width", size: finished(small), smallest: large },
  ],
  "left-too-short": [
    { ...strip, kind: "left-too-short", side: "height", left: small, least: large },
    { ...at, kind: "left-too-short", side: "width", left: small, least: large },
  ],
  "unknown-piece": [{ ...at, kind: "unknown-piece", piece: "strip-99" }],
  "not-to-be-used": [{ ...strip, kind: "not-to-be-used", use: "keep-back" }],
  "length-as-piece": [{ ...at, kind: "length-as-piece", piece: "length-1" }],
  "crumbs-as-piece": [{ ...at, kind: "crumbs-as-piece", piece: "crumbs-1" }],
  "piece-too-small": [{ ...strip, kind: "piece-too-small", side: "width", needed: large, has: small }],
  "triangle-too-small": [
    { ...at, piece: "triangle-1", kind: "triangle-too-small", needed: size, legs: other },
  ],
  "one-way-turned": [{ ...strip, kind: "one-way-turned" }],
  "trimmed-too-much": [{ ...strip, kind: "trimmed-too-much", side: "width", trimmed: large, most: small }],
  "not-whole": [{ ...strip, kind: "not-whole", side: "height", needed: large, has: small }],
  "half-square-triangle-not-square": [
    { ...at, piece: "half-square-triangle-2", kind: "half-square-triangle-not-square", actual: size },
  ],
  "wrong-quarter": [{ ...strip, kind: "wrong-quarter" }],
  "used-too-often": [{ ...strip, kind: "used-too-often", used: 3, count: 1 }],
  "wrong-unused": [{ ...strip, kind: "wrong-unused", expected: 2, actual: 1 }],
  "copy-of-uncut-piece": [{ ...strip, kind: "copy-of-uncut-piece", copy: 1 }],
  "copy-gives-one-cell": [{ ...strip, kind: "copy-gives-one-cell", copy: 1 }],
  "copy-out-of-range": [{ ...strip, kind: "copy-out-of-range", copy: 3, count: 2 }],
  "copy-too-short": [{ ...strip, kind: "copy-too-short", copy: 1, needed: large, has: small }],
  "unknown-fabric": [{ ...at, kind: "unknown-fabric", fabric: "oat" }],
  "cloth-not-from-a-length": [{ ...strip, kind: "cloth-not-from-a-length" }],
  "cloth-of-another-fabric": [
    { ...at, piece: "length-1", kind: "cloth-of-another-fabric", fabric: "oat", has: "teal" },
  ],
  "cannot-be-shown-to-fit": [
    {
      ...at,
      piece: "length-1",
      kind: "cannot-be-shown-to-fit",
      copy: 1,
      cells: 3,
      needed: squareInches(1700),
      has: squareInches(1722),
    },
  ],
  "cloth-not-bought": [{ ...at, kind: "cloth-not-bought", fabric: "oat" }],
  "cloth-too-wide": [{ ...at, kind: "cloth-too-wide", fabric: "oat", needed: inches(44), has: inches(42) }],
  "bought-too-little": [
    {
      ...at,
      kind: "bought-too-little",
      fabric: "oat",
      cells: 1,
      needed: squareInches(1700),
      has: squareInches(1500),
    },
  ],
  "unknown-pattern": [{ ...at, kind: "unknown-pattern", pattern: "comet" }],
  "wrong-unit-parts": [
    { ...at, kind: "wrong-unit-parts", pattern: "pinwheel" },
    { ...strip, kind: "wrong-unit-parts", pattern: "pinwheel" },
  ],
  "wrong-unit-size": [
    { ...at, kind: "wrong-unit-size", pattern: "pinwheel", actual: size, smallest: other, largest: other },
    { ...at, kind: "wrong-unit-size", pattern: "pinwheel", actual: size, smallest: other, largest: size },
  ],
  "slab-of-nothing": [{ ...at, kind: "slab-of-nothing" }],
  "slab-not-from-crumbs": [{ ...strip, kind: "slab-not-from-crumbs" }],
  "slab-too-large": [{ ...at, kind: "slab-too-large", needed: squareInches(200), has: squareInches(9.5) }],
};
export const layoutProblems = all<LayoutProblem>(layouts);

const inPlan = { path: "layout.parts[2].width" };

const plans: EveryKind<PlanProblem> = {
  "file-too-large": [{ path: "", kind: "file-too-large", most: 20_000_000 }],
  "not-json": [{ path: "", kind: "not-json" }],
  "not-a-plan": [{ path: "", kind: "not-a-plan" }],
  "newer-version": [{ path: "", kind: "newer-version", version: 2, known: 1 }],
  missing: [{ ...inPlan, kind: "missing" }],
  "wrong-type": [{ ...inPlan, kind: "wrong-type", expected: "number" }],
  "not-one-of": [{ ...inPlan, kind: "not-one-of", choices: ["in", "cm"] }],
  "not-a-length": [{ ...inPlan, kind: "not-a-length", value: 2.1234567 }],
  "out-of-range": [{ ...inPlan, kind: "out-of-range", value: -3, least: 0, most: 400 }],
  "text-too-long": [{ ...inPlan, kind: "text-too-long", most: 1000 }],
  "too-many": [{ ...inPlan, kind: "too-many", most: 5000 }],
  "too-deep": [{ ...inPlan, kind: "too-deep", most: 60 }],
  twice: [{ ...inPlan, kind: "twice", id: "strip-1" }],
  "not-one-source": [{ ...inPlan, kind: "not-one-source" }],
  "more-problems": [{ path: "", kind: "more-problems" }],
};
export const planProblems = all<PlanProblem>(plans);
