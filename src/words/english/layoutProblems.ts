import type {
  CellProblem,
  ClothProblem,
  CountProblem,
  LayoutNode,
  LayoutProblem,
  PieceProblem,
  SlabProblem,
  TreeProblem,
  UnitProblem,
} from "../../engine/layout/index.ts";
import { quoted, sentence, type Voice } from "../voice.ts";
import { patternName, pieceName, placeName, useNames } from "./names.ts";

/** Where it is, what is so there, then what to do. */
export function layoutProblem(problem: LayoutProblem, layout: LayoutNode | undefined, voice: Voice): string {
  return `${sentence(placeName(problem.path, layout))}: ${whatIsWrong(problem, voice)}`;
}

function whatIsWrong(problem: LayoutProblem, voice: Voice): string {
  switch (problem.kind) {
    case "too-deep":
    case "too-many-cells":
    case "layout-not-the-back":
    case "too-few-parts":
    case "parts-do-not-add-up":
    case "edges-not-equal":
    case "join-not-flattened":
    case "wrong-seam":
      return treeProblem(problem, voice);
    case "size-not-positive":
    case "off-step":
    case "under-smallest":
    case "left-too-short":
      return cellProblem(problem, voice);
    case "unknown-piece":
    case "not-to-be-used":
    case "length-as-piece":
    case "crumbs-as-piece":
    case "piece-too-small":
    case "triangle-too-small":
    case "one-way-turned":
    case "trimmed-too-much":
    case "not-whole":
    case "half-square-triangle-not-square":
    case "wrong-quarter":
      return pieceProblem(problem, voice);
    case "used-too-often":
    case "wrong-unused":
    case "copy-of-uncut-piece":
    case "copy-gives-one-cell":
    case "copy-out-of-range":
    case "copy-too-short":
      return countProblem(problem, voice);
    case "unknown-fabric":
    case "cloth-not-from-a-length":
    case "cloth-of-another-fabric":
    case "cannot-be-shown-to-fit":
    case "cloth-not-bought":
    case "cloth-too-wide":
    case "bought-too-little":
      return clothProblem(problem, voice);
    case "unknown-pattern":
    case "wrong-unit-parts":
    case "wrong-unit-size":
      return unitProblem(problem, voice);
    case "slab-of-nothing":
    case "slab-not-from-crumbs":
    case "slab-too-large":
      return slabProblem(problem, voice);
  }
}

function treeProblem(problem: TreeProblem, voice: Voice): string {
  switch (problem.kind) {
    case "too-deep":
      return `joins lie more than ${voice.number(problem.most)} deep in each other. Begin again with a simpler plan.`;
    case "too-many-cells":
      return `there are more than ${voice.number(problem.most)} cells. Begin again with a simpler plan.`;
    case "layout-not-the-back":
      return `it finishes ${voice.size(problem.actual)}, and inside its outer seam allowance this back is ${voice.size(problem.expected)}. Make the plain parts or the back fit.`;
    case "too-few-parts":
      return `a join here has ${voice.count(problem.parts, "part", "parts")}. Sewing together takes two or more.`;
    case "parts-do-not-add-up":
      return `the parts add up to ${voice.length(problem.actual)}, and ${voice.length(problem.expected)} is needed. Add a strip, or cut a spacer to make up for it.`;
    case "edges-not-equal":
      return `this part is ${voice.length(problem.actual)} ${along(problem.side)}, and what it is sewn to ${voice.length(problem.expected)}. Cut or widen it to match.`;
    case "join-not-flattened":
      return `a join lies inside a join that runs the same way, with the same seam. Write its parts in the outer join.`;
    case "wrong-seam":
      return `the seam allowance is ${voice.length(problem.actual)}, and ${voice.length(problem.expected)} belongs here. The wider seam is for plain cloth on both sides only.`;
  }
}

function along(side: "width" | "height"): string {
  return side === "width" ? "wide" : "high";
}

function cellProblem(problem: CellProblem, voice: Voice): string {
  switch (problem.kind) {
    case "size-not-positive":
      return `nothing shows of this cell, ${voice.size(problem.actual)}. Make it larger, or leave it out.`;
    case "off-step":
      return `${nameOr(problem.piece)} finishes ${voice.length(problem.size)} ${along(problem.side)}, between two marks of a ruler with ${voice.length(problem.step)} steps. Bring it to a mark.`;
    case "under-smallest":
      return `${nameOr(problem.piece)} finishes ${voice.length(problem.size)} ${along(problem.side)}, and ${voice.length(problem.smallest)} is the least here. Make it larger, or sew it into a slab.`;
    case "left-too-short":
      return `${nameOr(problem.piece)} is left ${voice.length(problem.left)} longer to be trimmed once it is sewn, and ${voice.length(problem.least)} is the least beside a long join. Leave it longer.`;
  }
}

function nameOr(piece: string | undefined): string {
  return piece === undefined ? "this cell" : pieceName(piece);
}

function pieceProblem(problem: PieceProblem, voice: Voice): string {
  const name = pieceName(problem.piece);
  switch (problem.kind) {
    case "unknown-piece":
      return `${name} is not among the leftovers. Put another piece here.`;
    case "not-to-be-used":
      return `${name} is marked “${useNames[problem.use]}”. Put another piece here, or change the mark.`;
    case "length-as-piece":
      return `${name} is a length of cloth. Its cells are plain cloth, cut from it.`;
    case "crumbs-as-piece":
      return `${name} are too small to place one by one. Sew them into a slab.`;
    case "piece-too-small":
      return `${name} is ${voice.length(problem.has)} ${along(problem.side)}, and ${voice.length(problem.needed)} must be cut for this cell. Put a larger piece here, or make the cell smaller.`;
    case "triangle-too-small":
      return `a rectangle of ${voice.size(problem.needed)} does not fit into ${name}, whose short sides are ${voice.size(problem.legs)}. Put a larger piece here.`;
    case "one-way-turned":
      return `${name} has a print that stands upright, and it lies on its side here. Turn it, or put another piece here.`;
    case "trimmed-too-much":
      return `${voice.length(problem.trimmed)} would be trimmed off ${name}, and ${voice.length(problem.most)} is the most. Put a smaller piece here, or make the cell larger.`;
    case "not-whole":
      return `${name} is ${voice.length(problem.has)} ${along(problem.side)} and is to stay whole, and this cell takes ${voice.length(problem.needed)}. Make the cell fit the piece.`;
    case "half-square-triangle-not-square":
      return `${name} would be cut to ${voice.size(problem.actual)}, and its diagonal would miss the corners. Keep it square.`;
    case "wrong-quarter":
      return `${name} cannot lie as it is written here. Quarter turns, from 0 to 3, are for half-square triangles.`;
  }
}

function countProblem(problem: CountProblem, voice: Voice): string {
  const name = pieceName(problem.piece);
  switch (problem.kind) {
    case "used-too-often":
      return `${name} is used ${times(problem.used, voice)}, and there ${voice.isOne(problem.count) ? "is" : "are"} ${voice.number(problem.count)}. Put another piece in the place of the rest.`;
    case "wrong-unused":
      return `${voice.number(problem.expected)} of ${name} stay over, and the plan says ${voice.number(problem.actual)}. Correct the list of what is not used.`;
    case "copy-of-uncut-piece":
      return `${name} is cut into several here, and it is not marked for that. Use it once, or mark it “cut”.`;
    case "copy-gives-one-cell":
      return `number ${voice.number(problem.copy)} of ${name} gives one cell alone, so it needs no number. Take the number away.`;
    case "copy-out-of-range":
      return `number ${voice.number(problem.copy)} of ${name} is named, and there ${voice.isOne(problem.count) ? "is" : "are"} ${voice.number(problem.count)}. Name one that is there.`;
    case "copy-too-short":
      return `number ${voice.number(problem.copy)} of ${name} is ${voice.length(problem.has)} long, and ${voice.length(problem.needed)} would be cut from it. Move a cell to another strip.`;
  }
}

function times(count: number, voice: Voice): string {
  return voice.isOne(count) ? "once" : `${voice.number(count)} times`;
}

function clothProblem(problem: ClothProblem, voice: Voice): string {
  switch (problem.kind) {
    case "unknown-fabric":
      return `the fabric ${quoted(problem.fabric)} is not in the plan. Name one that is.`;
    case "cloth-not-from-a-length":
      return `plain cloth is to be cut from ${pieceName(problem.piece)}, which is not a length. Cut it from a length, or buy it.`;
    case "cloth-of-another-fabric":
      return `${pieceName(problem.piece)} is ${quoted(problem.has)}, and ${quoted(problem.fabric)} is planned here. Name the fabric it is cut from.`;
    case "cannot-be-shown-to-fit":
      return `no way was found to cut ${voice.count(problem.cells, "cell", "cells")} (${voice.area(problem.needed)}) from number ${voice.number(problem.copy)} of ${pieceName(problem.piece)} (${voice.area(problem.has)}). Cut some of them from other cloth.`;
    case "cloth-not-bought":
      return `plain cloth of ${quoted(problem.fabric)} is to be bought, and the list of what to buy has none. Add it there.`;
    case "cloth-too-wide":
      return `${voice.length(problem.needed)} of ${quoted(problem.fabric)} must be cut across, and the cloth is ${voice.length(problem.has)} wide. Seam it, or buy wider cloth.`;
    case "bought-too-little":
      return `no way was found to cut ${voice.count(problem.cells, "cell", "cells")} (${voice.area(problem.needed)}) of ${quoted(problem.fabric)} from what is bought (${voice.area(problem.has)}). Buy more.`;
  }
}

function unitProblem(problem: UnitProblem, voice: Voice): string {
  const pattern = patternName(problem.pattern);
  switch (problem.kind) {
    case "unknown-pattern":
      return `${quoted(pattern)} is not a pattern that is known here. Make this unit another way.`;
    case "wrong-unit-parts":
      return `${problem.piece === undefined ? "these parts do" : `${pieceName(problem.piece)} does`} not make a unit of the pattern ${quoted(pattern)}. Choose other parts, or another pattern.`;
    case "wrong-unit-size":
      return wrongUnitSize(problem, voice);
  }
}

function wrongUnitSize(problem: Extract<UnitProblem, { kind: "wrong-unit-size" }>, voice: Voice): string {
  const { actual, smallest, largest } = problem;
  const one = smallest.width === largest.width && smallest.height === largest.height;
  const right = one ? voice.size(largest) : `${voice.size(smallest)} to ${voice.size(largest)}`;
  return `the unit finishes ${right} from its pieces, and ${voice.size(actual)} is planned. Make the cell that size.`;
}

function slabProblem(problem: SlabProblem, voice: Voice): string {
  switch (problem.kind) {
    case "slab-of-nothing":
      return "it is not said what this slab is made of. Name crumbs or pieces for it.";
    case "slab-not-from-crumbs":
      return `this slab is to be made of crumbs, and ${pieceName(problem.piece)} is not. Name crumbs, or list it as a piece.`;
    case "slab-too-large":
      return `the slabs take ${voice.area(problem.needed)}, and what they are made of gives ${voice.area(problem.has)}. Make fewer or smaller slabs.`;
  }
}
