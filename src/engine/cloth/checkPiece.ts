import { area, cut, type Length, length } from "../length/index.ts";
import { areaOfWeight } from "./crumbs.ts";
import { largestBack, largestPiece, mostPieces } from "./defaults.ts";
import type { DraftPiece } from "./draft.ts";
import type { DraftProblem, Side } from "./problems.ts";
import { finishedArea, kindFromSides } from "./shape.ts";
import type { Grain, Kind } from "./types.ts";

/** A leftover's kind as she gave it, or as its measures tell it; `null` when there is nothing to tell it from. */
export function kindOf(piece: DraftPiece): Kind | null {
  if (piece.kind) return piece.kind;
  if (piece.width !== undefined && piece.height !== undefined)
    return kindFromSides(piece.width, piece.height);
  const sides = piece.width ?? piece.height;
  return sides === undefined && (piece.area ?? piece.weight) !== undefined ? "crumbs" : null;
}

/** Everything that is wrong or worth knowing about one row, its colour aside. */
export function pieceProblems(piece: DraftPiece, seam: Length): DraftProblem[] {
  const kind = kindOf(piece);
  const measures = kind === "crumbs" ? crumbsProblems(piece) : sidesProblems(piece, seam);
  return [...measures, ...countProblems(piece), ...(kind === null ? [] : grainProblems(piece, kind))];
}

const sides = ["width", "height"] as const;

function sidesProblems(piece: DraftPiece, seam: Length): DraftProblem[] {
  const wrong = sides.flatMap((side) => sideProblems(piece, side));
  const spare = (["area", "weight"] as const).flatMap((field) => notUsed(piece, field));
  return [...wrong, ...(wrong.length === 0 ? narrowProblems(piece, seam) : []), ...spare];
}

function sideProblems(piece: DraftPiece, field: Side): DraftProblem[] {
  const { row, [field]: size } = piece;
  if (size === undefined) return [{ kind: "size-missing", severity: "stop", row, field }];
  if (size <= 0) return [{ kind: "size-zero", severity: "stop", row, field }];
  if (size <= largestPiece) return [];
  return [{ kind: "piece-too-large", severity: "stop", row, field, size, most: largestPiece }];
}

function narrowProblems(piece: DraftPiece, seam: Length): DraftProblem[] {
  const { row, width, height } = piece;
  if (width === undefined || height === undefined) return [];
  const kind = piece.kind === "triangle" ? "triangle" : "rectangle";
  if (finishedArea({ kind, width: cut(width), height: cut(height) }, seam) > 0) return [];
  const seams = length(2 * seam);
  const narrow = sides.filter((side) => (piece[side] ?? 0) <= seams);
  // A triangle loses its tips too, so it may be all seam with both legs longer than two seams.
  const fields = narrow.length > 0 ? narrow : ([width <= height ? "width" : "height"] as const);
  return fields.map((field) => {
    const size = field === "width" ? width : height;
    return { kind: "narrower-than-seams", severity: "note", row, field, size, seams };
  });
}

function crumbsProblems(piece: DraftPiece): DraftProblem[] {
  const { row } = piece;
  const spare = sides.flatMap((field) => notUsed(piece, field));
  if (piece.area !== undefined && piece.weight !== undefined) {
    return [
      ...amountProblems(piece),
      { kind: "area-and-weight", severity: "note", row, field: "weight" },
      ...spare,
    ];
  }
  if (piece.area === undefined && piece.weight === undefined) {
    return [{ kind: "crumbs-without-amount", severity: "stop", row, field: "area" }, ...spare];
  }
  return [...amountProblems(piece), ...spare];
}

function amountProblems(piece: DraftPiece): DraftProblem[] {
  const { row } = piece;
  const field = piece.area === undefined ? "weight" : "area";
  const amount = piece.area ?? areaOfWeight(piece.weight ?? 0).likely;
  const most = area(largestBack, largestBack);
  // Written so that an amount that is no number at all is caught as well.
  if (!(amount > 0)) return [{ kind: "amount-zero", severity: "stop", row, field }];
  return amount <= most ? [] : [{ kind: "amount-too-large", severity: "stop", row, field, most }];
}

function notUsed(piece: DraftPiece, field: Side | "area" | "weight"): DraftProblem[] {
  if (piece[field] === undefined) return [];
  return [{ kind: "not-used", severity: "note", row: piece.row, field }];
}

function countProblems(piece: DraftPiece): DraftProblem[] {
  const { row, count = 1 } = piece;
  const at = { severity: "stop", row, field: "count", count } as const;
  if (!Number.isInteger(count)) return [{ kind: "count-not-whole", ...at }];
  if (count < 1) return [{ kind: "count-too-small", ...at }];
  if (count > 1 && kindOf(piece) === "crumbs") return [{ kind: "crumbs-counted", ...at }];
  return count <= mostPieces ? [] : [{ kind: "count-too-large", ...at, most: mostPieces }];
}

function grainProblems(piece: DraftPiece, pieceKind: Kind): DraftProblem[] {
  const { row, grain } = piece;
  if (grain === undefined || grainFits(grain, pieceKind)) return [];
  return [{ kind: "grain-not-for-kind", severity: "stop", row, field: "grain", grain, pieceKind }];
}

function grainFits(grain: Grain, kind: Kind): boolean {
  if (grain === "unknown") return true;
  const ofTriangle = grain === "legs" || grain === "long-side";
  return ofTriangle === (kind === "triangle");
}
