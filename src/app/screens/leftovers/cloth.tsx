import { memo } from "react";
import type { Length } from "../../../engine/length/index.ts";
import styles from "./cloth.module.css";
import {
  outlineOf,
  type PieceShape,
  type RowPicture,
  rulerFor,
  seamInside,
  shareAcross,
} from "./pictures.ts";

type PieceClothProps = {
  readonly picture: RowPicture;
  /** As CSS; null: none is known. */
  readonly colour: string | null;
  /** What the whole place is wide. */
  readonly across: Length;
};

/** Pieces of one row, to scale and in their own colour. What they are stands beside them in words. */
export const PieceCloth = memo(function PieceCloth({ picture, colour, across }: PieceClothProps) {
  const { width, height, shapes } = picture;
  return (
    <svg
      className={`cloth ${styles.pieces}`}
      viewBox={`0 0 ${width} ${height}`}
      style={{ "--share": shareAcross(picture, across), aspectRatio: `${width} / ${height}` }}
      aria-hidden="true"
    >
      {shapes.map((shape) => (
        <Piece key={`${shape.x} ${shape.y}`} shape={shape} colour={colour} />
      ))}
    </svg>
  );
});

function Piece({ shape, colour }: { readonly shape: PieceShape; readonly colour: string | null }) {
  const seam = seamInside(shape);
  const own = colour === null ? { className: styles.noColour } : { fill: colour };
  return (
    <>
      <path d={outlineOf(shape)} {...own} />
      {seam !== null && <path className={`${styles.seam} ${styles.light}`} d={seam} />}
      {seam !== null && <path className={`${styles.seam} ${styles.dark}`} d={seam} />}
      <path className={shape.kind === "loose" ? styles.looseEdge : styles.edge} d={outlineOf(shape)} />
    </>
  );
}

type ScaleRulerProps = {
  readonly across: Length;
  readonly unit: "in" | "cm";
  readonly name: (length: Length) => string;
};

/** What the drawings are measured by. */
export function ScaleRuler({ across, unit, name }: ScaleRulerProps) {
  const length = rulerFor(across, unit);
  return (
    <div
      className={styles.ruler}
      style={{ "--share": shareAcross({ width: length, height: length }, across) }}
    >
      <span className={styles.scale} aria-hidden="true" />
      <span>{name(length)}</span>
    </div>
  );
}
