import { useMemo, useState } from "react";
import { Button } from "react-aria-components";
import type { Leftover } from "../../../files/index.ts";
import type { LeftoversTexts } from "../../../words/index.ts";
import { CellEditor, type Editing } from "./cellEditor.tsx";
import { listColumns } from "./cells.ts";
import { as, type Stop, stopAt } from "./grid.ts";
import { useHeap, useLeftoversTexts } from "./heapContext.ts";
import styles from "./list.module.css";
import { Choose, HeapRow, type RowManner } from "./listRow.tsx";
import { isLineOnly } from "./mending.ts";
import { RowForm } from "./rowForm.tsx";
import { useShownPart } from "./shownPart.ts";
import { type ChangeChosen, type Chosen, useGridChoice } from "./useGridChoice.ts";

type HeapListProps = { readonly chosen: Chosen; readonly onChoose: ChangeChosen };

// Each row is eight things to press: more of them make a page slow to come on an old tablet.
const shownFirst = 40;

/** Every row in a grid; the last one entered first. */
export function HeapList({ chosen, onChoose }: HeapListProps) {
  const texts = useLeftoversTexts();
  const { leftovers, settings } = useHeap().project;
  const [editing, setEditing] = useState<Editing | null>(null);
  const [whole, setWhole] = useState<string | null>(null);
  const newestFirst = useMemo(() => {
    return leftovers
      .map((leftover, index) => ({ number: index + 1, leftover }))
      .filter(({ leftover }) => !isLineOnly(leftover))
      .reverse();
  }, [leftovers]);
  const ids = useMemo(() => newestFirst.map(({ leftover }) => leftover.id), [newestFirst]);
  const { shown, rest, showMore } = useShownPart(newestFirst, shownFirst);
  const choice = useGridChoice(ids, onChoose);
  const { turn } = choice;
  const manner = useMemo<RowManner>(
    () => ({ texts, unit: settings.unit, onTurn: turn, onEdit: setEditing, onWhole: setWhole }),
    [texts, settings.unit, turn],
  );
  return (
    <section className={styles.list} aria-label={texts.list}>
      <p className={styles.how}>{texts.listHow}</p>
      <Grid shown={shown} ids={ids} chosen={chosen} choice={choice} manner={manner} />
      {rest > 0 && (
        <Button className="button plain" onPress={showMore}>
          {texts.more(rest)}
        </Button>
      )}
      <p className="onlyRead" aria-live="polite">
        {chosen.size > 0 && texts.nChosen(chosen.size)}
      </p>
      {editing !== null && (
        <CellEditor
          key={`${editing.id} ${editing.column}`}
          editing={editing}
          onClose={() => setEditing(null)}
        />
      )}
      {whole !== null && <RowForm key={whole} id={whole} onClose={() => setWhole(null)} />}
    </section>
  );
}

type GridProps = {
  readonly shown: readonly { readonly number: number; readonly leftover: Leftover }[];
  /** Of all of them, those that are not shown yet too. */
  readonly ids: readonly string[];
  readonly chosen: Chosen;
  readonly choice: ReturnType<typeof useGridChoice>;
  readonly manner: RowManner;
};

function Grid({ shown, ids, chosen, choice, manner }: GridProps) {
  const { texts } = manner;
  const colours = useColours();
  const [last, setLast] = useState<Stop | null>(null);
  const isLastThere =
    last !== null && (last.row === "" || shown.some(({ leftover }) => leftover.id === last.row));
  const stop = isLastThere ? last : { row: ids[0] ?? "", column: 0 };
  const stopOf = (row: string) => (stop.row === row ? stop.column : null);
  return (
    <table
      {...as.grid}
      aria-label={texts.list}
      aria-rowcount={ids.length + 1}
      className={styles.table}
      onFocus={({ target }) => setLast(stopAt(target))}
      onKeyDown={choice.onKeyDown}
      onKeyUp={choice.onKeyUp}
    >
      <Head
        texts={texts}
        isAll={ids.every((id) => chosen.has(id))}
        isSome={chosen.size > 0}
        stop={stopOf("")}
        onTurn={choice.turnAll}
      />
      <tbody {...as.rows}>
        {shown.map(({ number, leftover }, at) => (
          <HeapRow
            key={leftover.id}
            leftover={leftover}
            number={number}
            index={at + 2}
            colour={colours.get(leftover.id) ?? null}
            isChosen={chosen.has(leftover.id)}
            stop={stopOf(leftover.id)}
            manner={manner}
          />
        ))}
      </tbody>
    </table>
  );
}

function useColours(): ReadonlyMap<string, string> {
  const { rows } = useHeap();
  return useMemo(() => new Map(rows.map(({ id, fabric }) => [id, fabric.colour])), [rows]);
}

type HeadProps = {
  readonly texts: LeftoversTexts;
  readonly isAll: boolean;
  readonly isSome: boolean;
  readonly stop: number | null;
  readonly onTurn: () => void;
};

function Head({ texts, isAll, isSome, stop, onTurn }: HeadProps) {
  const heads = [...listColumns.map((column) => texts.column[column]), texts.allAbout];
  const placeOf = (at: number) => styles[listColumns[at] ?? "whole"];
  return (
    <thead {...as.rows} className={styles.head}>
      <tr {...as.row} aria-rowindex={1}>
        <th {...as.columnHead} className={styles.check}>
          <Choose
            name={texts.chooseAll}
            isChosen={isAll}
            isPart={isSome && !isAll}
            isStop={stop === 0}
            onTurn={onTurn}
          />
        </th>
        {heads.map((head, at) => (
          <th key={head} {...as.columnHead} tabIndex={stop === at + 1 ? 0 : -1} className={placeOf(at)}>
            {head}
          </th>
        ))}
      </tr>
    </thead>
  );
}
