import { Button, Checkbox, Input, Label, TextField } from "react-aria-components";
import fieldStyles from "../../parts/lengthField/lengthField.module.css";
import { useClothNames } from "./addBar.tsx";
import type { Marking } from "./marking.ts";
import { PieceForm } from "./pieceForm.tsx";
import styles from "./pieceList.module.css";
import {
  countOf,
  ownDoubts,
  sizeOf,
  type TableCloth,
  type TablePiece,
  withChange,
  withName,
  withTaken,
} from "./pieces.ts";
import type { PiecesProps, Selection } from "./selection.ts";
import { usePhotoTexts, useTable, useTableState } from "./tableFor.ts";

type ListProps = PiecesProps & { readonly marking: Marking };

/** What was found, cloth by cloth: each is named once, each piece ticked, changed or left out by itself. */
export function PieceList({ pieces, selection, marking }: ListProps) {
  const texts = usePhotoTexts();
  const table = useTable();
  const { cloths, canTakeBack } = useTableState();
  if (pieces.length === 0 && !canTakeBack) return null;
  return (
    <section className={styles.list} aria-label={texts.pieces} tabIndex={-1}>
      <div className={styles.ways}>
        <Button className="button plain" onPress={() => table.edit((laid) => withTaken(laid, true))}>
          {texts.takeAll}
        </Button>
        <Button className="button plain" onPress={() => table.edit((laid) => withTaken(laid, false))}>
          {texts.takeNone}
        </Button>
        <Button className="button plain" isDisabled={!canTakeBack} onPress={table.takeBack}>
          {texts.takeBack}
        </Button>
      </div>
      {cloths.map((cloth) => {
        const own = pieces.filter((piece) => piece.cloth === cloth.id);
        return own.length === 0 ? null : (
          <Cloth key={cloth.id} cloth={cloth} pieces={own} selection={selection} marking={marking} />
        );
      })}
    </section>
  );
}

type ClothProps = ListProps & { readonly cloth: TableCloth };

function Cloth({ cloth, pieces, selection, marking }: ClothProps) {
  const texts = usePhotoTexts();
  const table = useTable();
  const usual = useClothNames()({ ...cloth, name: "" });
  return (
    <div className={styles.cloth}>
      <div className={styles.named}>
        <svg className={`cloth ${styles.swatch}`} viewBox="0 0 1 1" aria-hidden="true">
          <rect width="1" height="1" fill={cloth.colour} />
        </svg>
        <TextField
          className={`${fieldStyles.field}`}
          value={cloth.name}
          onChange={(name) => table.edit((laid) => withName(laid, cloth.id, name), `name ${cloth.id}`)}
        >
          <Label className={`${fieldStyles.label}`}>{texts.clothName}</Label>
          <Input className={`${fieldStyles.input}`} autoComplete="off" maxLength={200} placeholder={usual} />
        </TextField>
      </div>
      <ul className={styles.pieces}>
        {pieces.map((piece) => (
          <Piece key={piece.id} piece={piece} selection={selection} marking={marking} />
        ))}
      </ul>
    </div>
  );
}

type PieceProps = {
  readonly piece: TablePiece;
  readonly selection: Selection;
  readonly marking: Marking;
};

function Piece({ piece, selection, marking }: PieceProps) {
  const texts = usePhotoTexts();
  const table = useTable();
  const isChosen = piece.id === selection.chosen;
  const doubts = ownDoubts(piece.seen.check);
  const count = countOf(piece) ?? 1;
  return (
    <li id={piece.id} className={styles.piece} data-chosen={isChosen || undefined}>
      <Checkbox
        className={`${styles.take}`}
        aria-label={texts.takeIt(piece.number)}
        isSelected={piece.isTaken}
        onChange={(isTaken) => table.edit((laid) => withChange(laid, piece.id, { isTaken }))}
      >
        <span className={styles.box} aria-hidden="true" />
      </Checkbox>
      <span className={styles.frame}>
        <img className={`cloth ${styles.cutOut}`} src={piece.cutOut} alt="" />
      </span>
      <div className={styles.what}>
        <strong>{texts.piece(piece.number)}</strong>
        <span>
          {texts.is(piece.kind, sizeOf(piece))} {count > 1 && texts.times(count)}
        </span>
        {doubts.length > 0 && <span className={styles.check}>{texts.check(doubts)}</span>}
      </div>
      <Button
        className="button plain"
        aria-label={isChosen ? texts.doneNamed(piece.number) : texts.changeNamed(piece.number)}
        aria-expanded={isChosen}
        onPress={() => selection.choose(isChosen ? null : piece.id)}
      >
        {isChosen ? texts.done : texts.change}
      </Button>
      {isChosen && <PieceForm piece={piece} marking={marking} />}
    </li>
  );
}
