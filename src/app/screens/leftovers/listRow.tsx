import { type ChangeEvent, memo, useId } from "react";
import type { DisplayUnit } from "../../../engine/length/index.ts";
import type { Column, Leftover } from "../../../files/index.ts";
import type { LeftoversTexts } from "../../../words/index.ts";
import { usePicture } from "../../parts/pictures.ts";
import type { Editing } from "./cellEditor.tsx";
import { columnAt, type ListColumn, listColumns, shownCell } from "./cells.ts";
import { as } from "./grid.ts";
import styles from "./list.module.css";

/** What can be done with a row, and how it is told: the same for all of them. */
export type RowManner = {
  readonly texts: LeftoversTexts;
  readonly unit: DisplayUnit;
  /** `isStretch`: with all the rows between it and the one before. */
  readonly onTurn: (id: string, isStretch: boolean) => void;
  readonly onEdit: (editing: Editing) => void;
  readonly onWhole: (id: string) => void;
};

type HeapRowProps = {
  readonly leftover: Leftover;
  readonly number: number;
  /** Which row of the grid it is; the heads of the columns are its first. */
  readonly index: number;
  readonly colour: string | null;
  readonly isChosen: boolean;
  /** The cell that the Tab key comes to; null: none of this row. */
  readonly stop: number | null;
  readonly manner: RowManner;
};

/** Drawn anew by itself alone: forty of them at every press keep an old tablet from answering. */
export const HeapRow = memo(function HeapRow(props: HeapRowProps) {
  const { leftover, number, index, isChosen, stop, manner } = props;
  const { texts, onTurn, onWhole } = manner;
  const { id } = leftover;
  const kind = useId();
  return (
    <tr {...as.row} data-row={id} aria-rowindex={index} aria-selected={isChosen} className={styles.row}>
      <td {...as.cell} className={styles.check}>
        <Choose
          name={texts.chooseRow(number)}
          also={kind}
          isChosen={isChosen}
          isStop={stop === 0}
          onTurn={({ nativeEvent }) => onTurn(id, "shiftKey" in nativeEvent && nativeEvent.shiftKey === true)}
        />
      </td>
      {listColumns.map((column, at) => (
        <HeapCell key={column} {...props} column={column} isStop={stop === at + 1} kind={kind} />
      ))}
      <td {...as.cell} className={styles.whole}>
        <button
          type="button"
          tabIndex={stop === listColumns.length + 1 ? 0 : -1}
          className={styles.cell}
          aria-label={texts.allAboutRow(number)}
          onClick={() => onWhole(id)}
        >
          …
        </button>
      </td>
    </tr>
  );
});

type ChooseProps = {
  readonly name: string;
  /** The id of what else names it. */
  readonly also?: string;
  readonly isChosen: boolean;
  /** Whether some are chosen and others not. */
  readonly isPart?: boolean;
  readonly isStop: boolean;
  readonly onTurn: (event: ChangeEvent<HTMLInputElement>) => void;
};

/** The box that is seen is drawn by the style sheet. */
export function Choose({ name, also, isChosen, isPart = false, isStop, onTurn }: ChooseProps) {
  const id = useId();
  return (
    <label className={styles.choose}>
      <input
        ref={(box) => {
          if (box !== null) box.indeterminate = isPart;
        }}
        type="checkbox"
        id={id}
        tabIndex={isStop ? 0 : -1}
        aria-label={name}
        aria-labelledby={also === undefined ? undefined : `${id} ${also}`}
        checked={isChosen}
        onChange={onTurn}
      />
      <span className={styles.box} aria-hidden="true" />
    </label>
  );
}

type HeapCellProps = Omit<HeapRowProps, "stop"> & {
  readonly column: ListColumn;
  readonly isStop: boolean;
  /** The id of the cell that names the row. */
  readonly kind: string;
};

function HeapCell({ column, isStop, kind, ...row }: HeapCellProps) {
  const className = styles[column];
  const filled = columnAt(column, row.leftover);
  // Without anything to press the cell itself can be gone to.
  if (filled === null) return <td {...as.cell} className={className} tabIndex={isStop ? 0 : -1} />;
  const button = <CellButton {...row} place={column} column={filled} isStop={isStop} />;
  if (column !== "kind") {
    return (
      <td {...as.cell} className={className}>
        {button}
      </td>
    );
  }
  return (
    <th {...as.rowHead} id={kind} className={className}>
      {button}
    </th>
  );
}

type CellButtonProps = Pick<HeapRowProps, "leftover" | "colour" | "manner"> & {
  readonly place: ListColumn;
  readonly column: Column;
  readonly isStop: boolean;
};

function CellButton({ leftover, colour, manner, place, column, isStop }: CellButtonProps) {
  const { texts, unit, onEdit } = manner;
  const text = shownCell(column, leftover, unit, texts);
  const isSaid = place !== "use" || text !== "";
  return (
    <button
      type="button"
      tabIndex={isStop ? 0 : -1}
      className={styles.cell}
      aria-label={`${texts.column[column]}: ${text === "" ? texts.blank : text}`}
      onClick={({ currentTarget }) => onEdit({ id: leftover.id, column, at: currentTarget })}
    >
      {place === "fabric" && <Swatch picture={leftover.picture} colour={colour} />}
      <span className={isSaid ? undefined : styles.blank}>{text === "" ? "–" : text}</span>
    </button>
  );
}

type SwatchProps = { readonly picture: string | undefined; readonly colour: string | null };

function Swatch({ picture, colour }: SwatchProps) {
  const shown = usePicture(picture);
  if (shown !== null) return <img className={`cloth ${styles.picture}`} src={shown} alt="" />;
  return (
    <svg className={`cloth ${styles.swatch}`} viewBox="0 0 1 1" aria-hidden="true">
      <rect width="1" height="1" fill={colour ?? "none"} />
    </svg>
  );
}
