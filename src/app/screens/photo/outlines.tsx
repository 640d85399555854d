import { Handles } from "./handles.tsx";
import type { Marking } from "./marking.ts";
import { MarkSurface } from "./marks.tsx";
import styles from "./outlines.module.css";
import { ownDoubts, sizeOf, type TablePiece } from "./pieces.ts";
import type { PiecesProps } from "./selection.ts";
import type { TablePhoto } from "./table.ts";
import { usePhotoTexts } from "./tableFor.ts";

type OutlinesProps = PiecesProps & {
  readonly photo: TablePhoto & { readonly kind: "measured" };
  readonly marking: Marking;
};

/** The photo with every piece's outline over it, in two strokes so that it shows on any cloth. */
export function Outlines({ photo, pieces, selection, marking }: OutlinesProps) {
  const { width, height } = photo.found;
  const chosen = pieces.find(({ id }) => id === selection.chosen);
  const choose = (piece: TablePiece) =>
    marking.takes(piece) || selection.choose(piece.id === selection.chosen ? null : piece.id);
  return (
    <div className={`cloth ${styles.photo}`} style={{ aspectRatio: `${width} / ${height}` }}>
      <img src={photo.picture} alt="" className={styles.picture} />
      <svg viewBox={`0 0 ${width} ${height}`} className={styles.outlines} aria-hidden="true">
        {pieces.map((piece) => (
          <Outline key={piece.id} piece={piece} selection={selection} onChoose={choose} />
        ))}
      </svg>
      {pieces.map((piece) => (
        <NumberButton
          key={piece.id}
          piece={piece}
          size={photo.found}
          selection={selection}
          onChoose={choose}
        />
      ))}
      {chosen !== undefined && marking.mark === null && (
        <Handles key={chosen.id} photo={photo} piece={chosen} marking={marking} />
      )}
      <MarkSurface photo={photo} marking={marking} />
    </div>
  );
}

type OneProps = Pick<PiecesProps, "selection"> & {
  readonly piece: TablePiece;
  readonly onChoose: (piece: TablePiece) => void;
};

/** Outlines count from the first pixel's middle, pictures from its corner. */
function Outline({ piece, selection, onChoose }: OneProps) {
  const points = piece.seen.pixels.map(([x, y]) => `${x + 0.5},${y + 0.5}`).join(" ");
  const is = {
    "data-chosen": piece.id === selection.chosen || undefined,
    "data-doubted": ownDoubts(piece.seen.check).length > 0 || undefined,
    "data-out": !piece.isTaken || undefined,
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the number in its middle is a button for the same
    <g onClick={() => onChoose(piece)} {...is} className={styles.piece}>
      <polygon points={points} className={styles.under} />
      <polygon points={points} className={styles.over} />
    </g>
  );
}

type NumberButtonProps = OneProps & { readonly size: { readonly width: number; readonly height: number } };

function NumberButton({ piece, size, selection, onChoose }: NumberButtonProps) {
  const texts = usePhotoTexts();
  const { pixels } = piece.seen;
  const middle = (axis: 0 | 1) => pixels.reduce((sum, place) => sum + place[axis], 0) / pixels.length;
  const isChosen = piece.id === selection.chosen;
  return (
    <button
      type="button"
      className={styles.number}
      aria-label={texts.onPhoto(piece.number, piece.kind, sizeOf(piece))}
      aria-pressed={isChosen}
      style={{ left: `${(100 * middle(0)) / size.width}%`, top: `${(100 * middle(1)) / size.height}%` }}
      onClick={() => onChoose(piece)}
    >
      {piece.number}
    </button>
  );
}
