import { useState } from "react";
import type { Place } from "../../../photo/index.ts";
import type { PhotoCorrection } from "../../worker/photo/messages.ts";
import type { TablePiece } from "./pieces.ts";
import { usePhotoTexts, useTable } from "./tableFor.ts";

/** What taps on a photo mean now. */
export type Mark =
  /** The two ends of a line over a piece. */
  | {
      readonly kind: "split";
      readonly photo: string;
      readonly piece: TablePiece;
      readonly from: Place | null;
    }
  /** Another piece, which is one with this. */
  | { readonly kind: "merge"; readonly photo: string; readonly piece: TablePiece }
  /** A place where the floor lies bare; then the photo's pieces are found anew. */
  | { readonly kind: "floor"; readonly photo: string; readonly pieces: readonly string[] }
  /** A place inside of a piece that was missed; then, where nothing could be made out, its corners. */
  | { readonly kind: "missed"; readonly photo: string }
  | { readonly kind: "corners"; readonly photo: string; readonly corners: readonly Place[] };

export type Marking = ReturnType<typeof useMarking>;

/** Corrections that take a tap or several on the photo, and what is said of them. */
export function useMarking() {
  const texts = usePhotoTexts();
  const table = useTable();
  const [mark, setMark] = useState<Mark | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const begin = (next: Mark | null) => {
    setTrouble(null);
    setMark(next);
  };
  const correct = async (photo: string, correction: PhotoCorrection, old: readonly string[]) => {
    begin(null);
    const isDone = await table.correct(photo, correction, old);
    if (!isDone && correction.kind === "inside") setMark({ kind: "corners", photo, corners: [] });
    else if (!isDone) setTrouble(texts.notMade);
  };
  const place = (at: Place) => {
    if (mark?.kind === "floor") void correct(mark.photo, { kind: "floor", at }, mark.pieces);
    if (mark?.kind === "missed") void correct(mark.photo, { kind: "inside", at }, []);
    if (mark?.kind === "corners") setMark({ ...mark, corners: [...mark.corners, at] });
    if (mark?.kind === "split" && mark.from === null) setMark({ ...mark, from: at });
    else if (mark?.kind === "split" && mark.from !== null) {
      const { photo, piece, from } = mark;
      void correct(photo, { kind: "split", pixels: piece.seen.pixels, from, to: at }, [piece.id]);
    }
  };
  /** True: the tap on a piece was part of a correction. */
  const takes = (other: TablePiece): boolean => {
    if (mark?.kind !== "merge" || other.photo !== mark.photo || other.id === mark.piece.id) return false;
    const both = [mark.piece, other];
    const pixels = both.map(({ seen }) => seen.pixels);
    void correct(
      mark.photo,
      { kind: "merge", pixels },
      both.map(({ id }) => id),
    );
    return true;
  };
  const finish = () => {
    if (mark?.kind === "corners")
      void correct(mark.photo, { kind: "corners", pixels: mark.corners, snaps: "all" }, []);
  };
  const move = (piece: TablePiece, pixels: readonly Place[], snaps: number | "none") =>
    void correct(piece.photo, { kind: "corners", pixels, snaps }, [piece.id]);
  return { mark, trouble, begin, place, takes, finish, move };
}
