import { type FormEvent, useState } from "react";
import { Button, Dialog, Form, Heading, Modal, ModalOverlay } from "react-aria-components";
import { type Column, columns, type Leftover } from "../../../files/index.ts";
import { useProject, useProjectContent, useProjectPart } from "../../frame/index.ts";
import { chosenWord, editedRow, isChoiceColumn, optionsOf } from "./cells.ts";
import { useLeftoversTexts } from "./heapContext.ts";
import styles from "./rowForm.module.css";
import { LineField, WordField } from "./textField.tsx";

type RowFormProps = { readonly id: string; readonly onClose: () => void };

/** All that can be said of a row, in one form. Nothing changes before she is done. */
export function RowForm({ id, onClose }: RowFormProps) {
  const texts = useLeftoversTexts();
  const { leftovers } = useProjectContent();
  const index = leftovers.findIndex((row) => row.id === id);
  const leftover = leftovers[index];
  if (leftover === undefined) return null;
  return (
    <ModalOverlay
      isOpen
      isDismissable
      onOpenChange={(isOpen) => !isOpen && onClose()}
      className={`${styles.behind}`}
    >
      <Modal className={`${styles.sheet}`}>
        <Dialog className={`${styles.dialog}`}>
          <Heading slot="title" className={`${styles.title}`}>
            {texts.allAboutRow(index + 1)}
          </Heading>
          <Fields leftover={leftover} onClose={onClose} />
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function Fields({ leftover, onClose }: { readonly leftover: Leftover; readonly onClose: () => void }) {
  const texts = useLeftoversTexts();
  const handle = useProject();
  const { unit } = useProjectPart(({ settings }) => settings);
  const [typed, setTyped] = useState<ReadonlyMap<Column, string>>(new Map());
  const { change, faults } = editedRow(leftover, typed, unit);
  const type = (column: Column) => (text: string) => setTyped(new Map(typed).set(column, text));
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (faults.size > 0) return;
    if (typed.size > 0) handle.changeRow(leftover.id, change);
    onClose();
  };
  return (
    <Form className={`${styles.form}`} onSubmit={submit}>
      {columns.map((column) => {
        const fault = faults.get(column);
        return isChoiceColumn(column) ? (
          <WordField
            key={column}
            label={texts.column[column]}
            value={typed.get(column) ?? chosenWord(column, leftover)}
            options={[{ value: "", label: texts.usual }, ...optionsOf(column, texts)]}
            onChange={type(column)}
          />
        ) : (
          <LineField
            key={column}
            label={texts.column[column]}
            value={typed.get(column) ?? leftover.cells[column]?.text ?? ""}
            onChange={type(column)}
            trouble={fault === undefined ? null : texts.fault(fault)}
          />
        );
      })}
      <div className={styles.ways}>
        <Button type="submit" className="button next">
          {texts.done}
        </Button>
        <Button className="button plain" onPress={onClose}>
          {texts.cancel}
        </Button>
      </div>
    </Form>
  );
}
