import { useMemo, useState } from "react";
import {
  Button,
  Cell,
  Checkbox,
  Column,
  Row,
  type Selection,
  Table,
  TableBody,
  TableHeader,
} from "react-aria-components";
import type { Leftover } from "../../../files/index.ts";
import { useProjectState } from "../../frame/index.ts";
import { usePicture } from "../../parts/pictures.ts";
import { CellEditor, type Editing } from "./cellEditor.tsx";
import { columnAt, type ListColumn, listColumns, shownCell } from "./cells.ts";
import { useHeap, useLeftoversTexts } from "./heapContext.ts";
import styles from "./list.module.css";
import { isLineOnly } from "./mending.ts";
import { RowForm } from "./rowForm.tsx";
import { useShownPart } from "./shownPart.ts";

type HeapListProps = {
  readonly chosen: ReadonlySet<string>;
  readonly onChoose: (chosen: ReadonlySet<string>) => void;
};

// Each row is ten things to press: more of them make a page slow to come and slow to answer on an old tablet.
const shownFirst = 40;

/** Every row in a grid; the last one entered first. */
export function HeapList({ chosen, onChoose }: HeapListProps) {
  const texts = useLeftoversTexts();
  const { leftovers } = useProjectState().project;
  const [editing, setEditing] = useState<Editing | null>(null);
  const [whole, setWhole] = useState<string | null>(null);
  const newestFirst = useMemo(() => {
    return leftovers
      .map((leftover, index) => ({ id: leftover.id, number: index + 1, leftover }))
      .filter(({ leftover }) => !isLineOnly(leftover))
      .reverse();
  }, [leftovers]);
  const { shown, rest, showMore } = useShownPart(newestFirst, shownFirst);
  const choose = (keys: Selection) => {
    onChoose(new Set(keys === "all" ? leftovers.map(({ id }) => id) : [...keys].map(String)));
  };
  return (
    <section className={styles.list} aria-label={texts.list}>
      <p className={styles.how}>{texts.listHow}</p>
      <Table
        aria-label={texts.list}
        className={`${styles.table}`}
        selectionMode="multiple"
        selectedKeys={chosen}
        onSelectionChange={choose}
      >
        <Head />
        <TableBody items={shown}>
          {(row) => <HeapRow {...row} onEdit={setEditing} onWhole={() => setWhole(row.id)} />}
        </TableBody>
      </Table>
      {rest > 0 && (
        <Button className="button plain" onPress={showMore}>
          {texts.more(rest)}
        </Button>
      )}
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

function Head() {
  const texts = useLeftoversTexts();
  return (
    <TableHeader className={`${styles.head}`}>
      <Column className={`${styles.check}`}>
        <Choose name={texts.chooseAll} />
      </Column>
      {listColumns.map((column) => (
        <Column key={column} isRowHeader={column === "kind"} className={`${styles[column]}`}>
          {texts.column[column]}
        </Column>
      ))}
      <Column className={`${styles.whole}`}>{texts.allAbout}</Column>
    </TableHeader>
  );
}

/** The box itself is drawn by the style sheet. */
function Choose({ name }: { readonly name: string }) {
  return (
    <Checkbox slot="selection" aria-label={name} className={`${styles.choose}`}>
      <span className={styles.box} aria-hidden="true" />
    </Checkbox>
  );
}

type HeapRowProps = {
  readonly id: string;
  readonly number: number;
  readonly leftover: Leftover;
  readonly onEdit: (editing: Editing) => void;
  readonly onWhole: () => void;
};

function HeapRow({ id, number, leftover, onEdit, onWhole }: HeapRowProps) {
  const texts = useLeftoversTexts();
  return (
    <Row id={id} className={`${styles.row}`}>
      <Cell className={`${styles.check}`}>
        <Choose name={texts.chooseRow(number)} />
      </Cell>
      {listColumns.map((column) => (
        <Cell key={column} className={`${styles[column]}`}>
          <CellButton column={column} leftover={leftover} onEdit={onEdit} />
        </Cell>
      ))}
      <Cell className={`${styles.whole}`}>
        <Button className={`${styles.cell}`} aria-label={texts.allAboutRow(number)} onPress={onWhole}>
          …
        </Button>
      </Cell>
    </Row>
  );
}

type CellButtonProps = Pick<HeapRowProps, "leftover" | "onEdit"> & { readonly column: ListColumn };

function CellButton({ column: place, leftover, onEdit }: CellButtonProps) {
  const texts = useLeftoversTexts();
  const { unit } = useProjectState().project.settings;
  const column = columnAt(place, leftover);
  if (column === null) return null;
  const text = shownCell(column, leftover, unit, texts);
  const isSaid = place !== "use" || text !== "";
  return (
    <Button
      className={`${styles.cell}`}
      aria-label={`${texts.column[column]}: ${text === "" ? texts.blank : text}`}
      onPress={({ target }) => onEdit({ id: leftover.id, column, at: target })}
    >
      {place === "fabric" && <Swatch leftover={leftover} />}
      <span className={isSaid ? undefined : styles.blank}>{text === "" ? "–" : text}</span>
    </Button>
  );
}

function Swatch({ leftover }: { readonly leftover: Leftover }) {
  const { rows } = useHeap();
  const fabric = rows.find(({ id }) => id === leftover.id)?.fabric;
  const picture = usePicture(leftover.picture);
  if (picture !== null) return <img className={`cloth ${styles.picture}`} src={picture} alt="" />;
  return (
    <svg className={`cloth ${styles.swatch}`} viewBox="0 0 1 1" aria-hidden="true">
      <rect width="1" height="1" fill={fabric?.colour ?? "none"} />
    </svg>
  );
}
