import type { Area, Length } from "../length/index.ts";
import type { DraftPiece } from "./draft.ts";
import type { Grain, Kind } from "./types.ts";

export type Severity =
  /** No job can be made until it is mended. */
  | "stop"
  /** The job can go on; she should know. */
  | "note";

export type Side = "width" | "height";
export type PieceField = Exclude<keyof DraftPiece, "row">;
export type JobField =
  | "step"
  | "seam"
  | "plainSeam"
  | "top"
  | "back"
  | "floor"
  | "clothWidth"
  | "plain"
  | "pieces";

type InRow<K extends string, S extends Severity, F extends PieceField> = {
  readonly kind: K;
  readonly severity: S;
  readonly row: number;
  readonly field: F;
};

type InJob<K extends string, S extends Severity, F extends JobField> = {
  readonly kind: K;
  readonly severity: S;
  /** The job itself, no row of the table. */
  readonly row: null;
  readonly field: F;
};

/** A problem of one piece's row. */
export type PieceProblem =
  | InRow<"size-missing", "stop", Side>
  | InRow<"size-zero", "stop", Side>
  | (InRow<"piece-too-large", "stop", Side> & { readonly size: Length; readonly most: Length })
  /** Nothing of it would show once it is sewn: for a slab, or to leave out. `seams`: both allowances together. */
  | (InRow<"narrower-than-seams", "note", Side> & { readonly size: Length; readonly seams: Length })
  | (InRow<"count-not-whole", "stop", "count"> & { readonly count: number })
  /** 0 or less. */
  | (InRow<"count-too-small", "stop", "count"> & { readonly count: number })
  | (InRow<"count-too-large", "stop", "count"> & { readonly count: number; readonly most: number })
  /** Crumbs are one heap, known by area or weight. */
  | (InRow<"crumbs-counted", "stop", "count"> & { readonly count: number })
  | InRow<"crumbs-without-amount", "stop", "area">
  | InRow<"amount-zero", "stop", "area" | "weight">
  | (InRow<"amount-too-large", "stop", "area" | "weight"> & { readonly most: Area })
  /** Both given: the area is used. */
  | InRow<"area-and-weight", "note", "weight">
  /** A size on crumbs, an area or weight on a piece with sides: read and left alone. */
  | InRow<"not-used", "note", Side | "area" | "weight">
  | InRow<"no-colour", "note", "colour">
  | (InRow<"unknown-colour", "stop", "colour"> & { readonly colour: string })
  /** One fabric name, two colours: they are kept as two fabrics. */
  | (InRow<"colour-conflict", "note", "colour"> & {
      readonly fabric: string;
      readonly colour: string;
      readonly firstRow: number;
      readonly firstColour: string;
    })
  /** `legs` and `long-side` are for triangles, `straight` and `bias` for all others. */
  | (InRow<"grain-not-for-kind", "stop", "grain"> & { readonly grain: Grain; readonly pieceKind: Kind });

type Range = { readonly size: Length; readonly least: Length; readonly most: Length };

/** A problem of the job around the pieces. */
export type JobProblem =
  | (InJob<"back-zero", "stop", "back"> & { readonly side: Side })
  | (InJob<"back-too-small", "stop", "back"> & {
      readonly side: Side;
      readonly size: Length;
      readonly least: Length;
    })
  | (InJob<"back-too-large", "stop", "back"> & {
      readonly side: Side;
      readonly size: Length;
      readonly most: Length;
    })
  /** The back ends between two marks of the ruler: it is made up to the next one (`made`). */
  | (InJob<"back-off-step", "note", "back"> & {
      readonly side: Side;
      readonly size: Length;
      readonly made: Length;
      readonly step: Length;
    })
  | (InJob<"top-zero", "stop", "top"> & { readonly side: Side })
  | (InJob<"top-larger-than-back", "stop", "top"> & {
      readonly side: Side;
      readonly top: Length;
      readonly back: Length;
    })
  /** The back reaches over the top by less than the extra she asked for. `wanted`: top and both extras. */
  | (InJob<"back-short-of-extra", "note", "back"> & {
      readonly side: Side;
      readonly back: Length;
      readonly wanted: Length;
    })
  | (InJob<"extra-out-of-range", "stop", "top"> & Range)
  | (InJob<"out-of-range", "stop", "step" | "seam" | "plainSeam" | "floor" | "clothWidth"> & Range)
  | (InJob<"unknown-plain-colour", "stop", "plain"> & { readonly colour: string })
  | (InJob<"too-many-pieces", "stop", "pieces"> & { readonly total: number; readonly most: number })
  /** No piece at all, or every one of them is kept back or given away. */
  | InJob<"nothing-to-plan", "stop", "pieces">;

export type DraftProblem = PieceProblem | JobProblem;
