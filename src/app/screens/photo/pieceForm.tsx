import { useRef } from "react";
import { Button, Checkbox, FieldError, Input, Label, TextField } from "react-aria-components";
import { type Kind, kinds } from "../../../engine/cloth/index.ts";
import { useProjectContent } from "../../frame/index.ts";
import { Fractions } from "../../parts/lengthField/fractions.tsx";
import fieldStyles from "../../parts/lengthField/lengthField.module.css";
import { LengthField } from "../../parts/lengthField/lengthField.tsx";
import { useClothNames } from "./addBar.tsx";
import type { Marking } from "./marking.ts";
import styles from "./pieceForm.module.css";
import {
  countOf,
  hasOneSide,
  type PieceChange,
  type TablePiece,
  withChange,
  withFold,
  withOwnCloth,
  withoutPiece,
} from "./pieces.ts";
import { usePhotoTexts, useTable, useTableState } from "./tableFor.ts";

type PieceProps = { readonly piece: TablePiece };

/** All that may be otherwise than the photo tells it. */
export function PieceForm({ piece, marking }: PieceProps & { readonly marking: Marking }) {
  const texts = usePhotoTexts();
  const table = useTable();
  const form = useRef<HTMLFieldSetElement>(null);
  const leaveOut = () => {
    // The reading goes on at the list: this line is gone.
    form.current?.closest("section")?.focus({ preventScroll: true });
    table.edit((laid) => withoutPiece(laid, piece.id));
  };
  return (
    <fieldset ref={form} className={styles.form} aria-label={texts.piece(piece.number)}>
      <KindField piece={piece} />
      <Sizes piece={piece} />
      <CountField piece={piece} />
      <ClothField piece={piece} />
      <Checkbox
        className={`${styles.folded}`}
        isSelected={piece.isFolded}
        onChange={(isFolded) => table.edit((laid) => withFold(laid, piece.id, isFolded))}
      >
        <span className={styles.box} aria-hidden="true" />
        {texts.folded}
      </Checkbox>
      <p className={styles.hint}>{texts.corners}</p>
      <div className={styles.ways}>
        <Button
          className="button"
          onPress={() => marking.begin({ kind: "split", photo: piece.photo, piece, from: null })}
        >
          {texts.split}
        </Button>
        <Button
          className="button"
          onPress={() => marking.begin({ kind: "merge", photo: piece.photo, piece })}
        >
          {texts.merge}
        </Button>
        <Button className="button" onPress={leaveOut}>
          {texts.leaveOut}
        </Button>
      </div>
    </fieldset>
  );
}

/** Each field of hers is one step to take back, however many letters she types into it. What she measured is sure. */
function useChange({ id }: TablePiece) {
  const table = useTable();
  return (change: PieceChange) =>
    table.edit((laid) => withChange(laid, id, change), `${id} ${Object.keys(change).join(" ")}`);
}

// Crumbs are known by their weight, which no photo tells.
const shownKinds = kinds.filter((kind) => kind !== "crumbs");

function KindField({ piece }: PieceProps) {
  const texts = usePhotoTexts();
  const change = useChange(piece);
  const choose = (value: string) => {
    const kind: Kind | undefined = shownKinds.find((one) => one === value);
    if (kind !== undefined) change({ kind });
  };
  return (
    <label className={fieldStyles.field}>
      <span className={fieldStyles.label}>{texts.kind}</span>
      <select
        className={fieldStyles.input}
        value={piece.kind}
        onChange={(event) => choose(event.target.value)}
      >
        {shownKinds.map((kind) => (
          <option key={kind} value={kind}>
            {texts.kinds[kind]}
          </option>
        ))}
      </select>
    </label>
  );
}

function Sizes({ piece }: PieceProps) {
  const texts = usePhotoTexts();
  const { unit } = useProjectContent().settings;
  const change = useChange(piece);
  const common = { unit, texts: { problem: texts.lengthProblem, meant: texts.meant } };
  const isOneSided = hasOneSide(piece.kind);
  return (
    <div className={styles.sizes}>
      <Fractions unit={unit} label={texts.fractions}>
        <div className={styles.sides}>
          <LengthField
            {...common}
            label={isOneSided ? texts.side : texts.width}
            measured={piece.width}
            onChange={(width) => change({ width, isTaken: true })}
          />
          {!isOneSided && (
            <LengthField
              {...common}
              label={texts.height}
              measured={piece.height}
              onChange={(height) => change({ height, isTaken: true })}
            />
          )}
        </div>
      </Fractions>
      {(piece.kind === "triangle" || piece.kind === "odd") && <p className={styles.hint}>{texts.legs}</p>}
    </div>
  );
}

function CountField({ piece }: PieceProps) {
  const texts = usePhotoTexts();
  const change = useChange(piece);
  const isWrong = countOf(piece) === null;
  return (
    <TextField
      className={`${fieldStyles.field}`}
      value={piece.count}
      onChange={(count) => change({ count })}
      isInvalid={isWrong}
      validationBehavior="aria"
    >
      <Label className={`${fieldStyles.label}`}>{texts.count}</Label>
      <Input className={`${fieldStyles.input}`} inputMode="numeric" autoComplete="off" />
      {isWrong && <FieldError className={`${fieldStyles.error}`}>{texts.countProblem}</FieldError>}
    </TextField>
  );
}

function ClothField({ piece }: PieceProps) {
  const texts = usePhotoTexts();
  const table = useTable();
  const { cloths, pieces } = useTableState();
  const nameOf = useClothNames();
  const shown = cloths.filter(({ id }) => pieces.some(({ cloth }) => cloth === id));
  const choose = (cloth: string) =>
    table.edit((laid) =>
      cloth === ""
        ? withOwnCloth(laid, piece.id, crypto.randomUUID())
        : withChange(laid, piece.id, { cloth }),
    );
  return (
    <label className={fieldStyles.field}>
      <span className={fieldStyles.label}>{texts.ofCloth}</span>
      <select
        className={fieldStyles.input}
        value={piece.cloth}
        onChange={(event) => choose(event.target.value)}
      >
        {shown.map((cloth) => (
          <option key={cloth.id} value={cloth.id}>
            {nameOf(cloth)}
          </option>
        ))}
        <option value="">{texts.ownCloth}</option>
      </select>
    </label>
  );
}
