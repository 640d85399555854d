import { type FormEvent, useEffect, useRef, useState } from "react";
import { Button, Dialog, Form, Menu, MenuItem, Popover } from "react-aria-components";
import type { Column, Leftover } from "../../../files/index.ts";
import { useProject, useProjectContent, useProjectPart } from "../../frame/index.ts";
import styles from "./cellEditor.module.css";
import { type ChoiceColumn, chosenWord, editedCell, isChoiceColumn, optionsOf } from "./cells.ts";
import { useLeftoversTexts } from "./heapContext.ts";
import { LineField } from "./textField.tsx";

/** The cell that is being changed, and where it stands on the page. */
export type Editing = { readonly id: string; readonly column: Column; readonly at: Element };

type CellEditorProps = { readonly editing: Editing; readonly onClose: () => void };

/** Opens over a cell: Enter takes what is written, Escape leaves it as it was. */
export function CellEditor({ editing, onClose }: CellEditorProps) {
  const texts = useLeftoversTexts();
  const leftover = useProjectContent().leftovers.find(({ id }) => id === editing.id);
  const anchor = useRef(editing.at);
  const close = () => {
    onClose();
    // Back to where she came from, so that the arrow keys go on from there.
    requestAnimationFrame(() => editing.at instanceof HTMLElement && editing.at.focus());
  };
  if (leftover === undefined) return null;
  const { column } = editing;
  return (
    <Popover
      isOpen
      triggerRef={anchor}
      onOpenChange={(isOpen) => !isOpen && close()}
      placement="bottom start"
      offset={-4}
      className={`${styles.popover}`}
    >
      <Dialog aria-label={texts.column[column]} className={`${styles.dialog}`}>
        {isChoiceColumn(column) ? (
          <Choices column={column} leftover={leftover} onClose={close} />
        ) : (
          <Typed column={column} leftover={leftover} onClose={close} />
        )}
      </Dialog>
    </Popover>
  );
}

type PartProps<C extends Column> = {
  readonly column: C;
  readonly leftover: Leftover;
  readonly onClose: () => void;
};

function Typed({ column, leftover, onClose }: PartProps<Column>) {
  const texts = useLeftoversTexts();
  const handle = useProject();
  const { unit } = useProjectPart(({ settings }) => settings);
  const field = useRef<HTMLInputElement>(null);
  const [text, setText] = useState(leftover.cells[column]?.text ?? "");
  const [isAsked, setAsked] = useState(false);
  const edited = editedCell(leftover, column, text, unit);
  useEffect(() => field.current?.select(), []);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (!edited.ok) return setAsked(true);
    handle.changeRow(leftover.id, edited.change);
    onClose();
  };
  return (
    <Form className={`${styles.form}`} onSubmit={submit}>
      <LineField
        label={texts.column[column]}
        value={text}
        onChange={setText}
        input={field}
        autoFocus
        trouble={isAsked && !edited.ok ? texts.fault(edited.fault) : null}
      />
      <div className={styles.ways}>
        <Button type="submit" className="button">
          {texts.done}
        </Button>
        <Button className="button plain" onPress={onClose}>
          {texts.cancel}
        </Button>
      </div>
    </Form>
  );
}

function Choices({ column, leftover, onClose }: PartProps<ChoiceColumn>) {
  const texts = useLeftoversTexts();
  const handle = useProject();
  const { unit } = useProjectPart(({ settings }) => settings);
  const now = chosenWord(column, leftover);
  const usual = "usual";
  const choose = (key: string) => {
    const edited = editedCell(leftover, column, key === usual ? "" : key, unit);
    if (edited.ok) handle.changeRow(leftover.id, edited.change);
    onClose();
  };
  return (
    <Menu
      aria-label={texts.column[column]}
      className={`${styles.choices}`}
      selectionMode="single"
      disallowEmptySelection
      selectedKeys={[now === "" ? usual : now]}
      onAction={(key) => choose(String(key))}
      autoFocus="first"
      shouldFocusWrap
    >
      {[{ value: usual, label: texts.usual }, ...optionsOf(column, texts)].map(({ value, label }) => (
        <MenuItem key={value} id={value} className={`${styles.choice}`}>
          {label}
        </MenuItem>
      ))}
    </Menu>
  );
}
