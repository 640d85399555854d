import type { TablePiece } from "./pieces.ts";

/** The piece she is at, on the photo and in the list alike. */
export type Selection = {
  readonly chosen: string | null;
  readonly choose: (piece: string | null) => void;
};

export type PiecesProps = { readonly pieces: readonly TablePiece[]; readonly selection: Selection };
