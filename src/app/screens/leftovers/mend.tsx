import { type FormEvent, memo, useMemo, useState } from "react";
import { Button, Form } from "react-aria-components";
import { type Column, type Leftover, readLine } from "../../../files/index.ts";
import { useProject, useProjectPart } from "../../frame/index.ts";
import { editedRow, isChoiceColumn, optionsOf } from "./cells.ts";
import { entryOf, knownFabrics } from "./entry.ts";
import type { Waiting } from "./heap.ts";
import { useHeap, useLeftoversTexts } from "./heapContext.ts";
import styles from "./mend.module.css";
import { type CellToMend, cellsToMend, isLineOnly, restOfRow } from "./mending.ts";
import { readingsIn, withReading } from "./preview.ts";
import { useShownPart } from "./shownPart.ts";
import { LineField, WordField } from "./textField.tsx";

/** Rows that wait: each as it was written, with its words. */
export const Mend = memo(function Mend({ say }: { readonly say: (text: string) => void }) {
  const texts = useLeftoversTexts();
  const { waiting, project } = useHeap();
  const { shown, rest, showMore } = useShownPart(waiting);
  if (waiting.length === 0) return null;
  return (
    <section className={styles.mend} aria-label={texts.waiting(waiting.length)}>
      <h2>{texts.waiting(waiting.length)}</h2>
      <p>{texts.waitingWhat}</p>
      <ul className={styles.rows}>
        {shown.map((row) => (
          <li key={row.leftover.id}>
            <WaitingRow
              row={row}
              number={project.leftovers.indexOf(row.leftover) + 1}
              onTaken={() => say(texts.entered(1, waiting.length - 1))}
              onLeftOut={() => say(texts.removed(1))}
            />
          </li>
        ))}
      </ul>
      {rest > 0 && (
        <Button className="button plain" onPress={showMore}>
          {texts.more(rest)}
        </Button>
      )}
    </section>
  );
});

type WaitingRowProps = {
  readonly row: Waiting;
  readonly number: number;
  /** It can be read now. */
  readonly onTaken: () => void;
  readonly onLeftOut: () => void;
};

function WaitingRow(props: WaitingRowProps) {
  return isLineOnly(props.row.leftover) ? <WaitingLine {...props} /> : <WaitingCells {...props} />;
}

function WaitingLine({ row: { leftover }, number, onTaken, onLeftOut }: WaitingRowProps) {
  const texts = useLeftoversTexts();
  const handle = useProject();
  const { unit } = useProjectPart(({ settings }) => settings);
  const [line, setLine] = useState(leftover.line);
  const reading = useMemo(() => readLine(line, unit), [line, unit]);
  const [problem] = reading.problems;
  // One of two readings is enough where nothing else is wrong.
  const take = (text: string) => {
    setLine(text);
    const entry = entryOf(text, readLine(text, unit), unit, knownFabrics(handle.state().project));
    if (entry === null) return;
    onTaken();
    if (entry.kind === "row")
      return handle.changeRow(leftover.id, { line: text.trim(), cells: entry.row.cells });
    handle.addRough(entry.stock);
    handle.removeRows([leftover.id]);
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    take(line);
  };
  return (
    <Form className={`${styles.row}`} onSubmit={submit} aria-label={texts.waitingLine(number)}>
      <LineField
        label={texts.waitingLine(number)}
        value={line}
        onChange={setLine}
        trouble={problem === undefined ? null : texts.lineProblem(problem)}
      >
        {problem !== undefined && readingsIn(problem).length > 0 && (
          <div className={styles.ways}>
            {readingsIn(problem).map((meant) => (
              <Button key={meant} className="button" onPress={() => take(withReading(line, problem, meant))}>
                {texts.meant(meant)}
              </Button>
            ))}
          </div>
        )}
        {problem === undefined && <p>{texts.understood(reading.piece)}</p>}
      </LineField>
      <Ways leftover={leftover} number={number} onLeftOut={onLeftOut} />
    </Form>
  );
}

function WaitingCells({ row, number, onTaken, onLeftOut }: WaitingRowProps) {
  const texts = useLeftoversTexts();
  const handle = useProject();
  const { unit } = useProjectPart(({ settings }) => settings);
  const [typed, setTyped] = useState<ReadonlyMap<Column, string>>(new Map());
  const cells = cellsToMend(row, unit, texts);
  const { change, faults } = editedRow(row.leftover, typed, unit);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (typed.size === 0 || faults.size > 0) return;
    handle.changeRow(row.leftover.id, change);
    onTaken();
  };
  const whyOf = ({ column, why }: CellToMend) => {
    const fault = faults.get(column);
    return fault !== undefined ? texts.fault(fault) : typed.has(column) ? null : why;
  };
  return (
    <Form className={`${styles.row}`} onSubmit={submit} aria-label={texts.waitingLine(number)}>
      <p className={styles.rest}>
        {texts.waitingLine(number)}: {restOfRow(row.leftover, cells)}
      </p>
      {cells.map((cell) => (
        <CellField
          key={cell.column}
          cell={cell}
          value={typed.get(cell.column) ?? cell.text}
          why={whyOf(cell)}
          onChange={(text) => setTyped(new Map(typed).set(cell.column, text))}
        />
      ))}
      <Ways leftover={row.leftover} number={number} onLeftOut={onLeftOut} />
    </Form>
  );
}

type CellFieldProps = {
  readonly cell: CellToMend;
  readonly value: string;
  readonly why: string | null;
  readonly onChange: (text: string) => void;
};

function CellField({ cell: { column }, value, why, onChange }: CellFieldProps) {
  const texts = useLeftoversTexts();
  if (!isChoiceColumn(column)) {
    return <LineField label={texts.column[column]} value={value} onChange={onChange} trouble={why} />;
  }
  const options = optionsOf(column, texts);
  const isKnown = options.some((option) => option.value === value);
  return (
    <div>
      <WordField
        label={texts.column[column]}
        value={isKnown ? value : ""}
        options={[
          { value: "", label: isKnown || value === "" ? texts.usual : texts.asWritten(value) },
          ...options,
        ]}
        onChange={onChange}
      />
      {why !== null && <p className={styles.why}>{why}</p>}
    </div>
  );
}

type WaysProps = Pick<WaitingRowProps, "number" | "onLeftOut"> & { readonly leftover: Leftover };

function Ways({ leftover, number, onLeftOut }: WaysProps) {
  const texts = useLeftoversTexts();
  const handle = useProject();
  return (
    <div className={styles.ways}>
      <Button type="submit" className="button">
        {texts.takeIt}
      </Button>
      <Button
        className="button plain"
        aria-label={texts.leaveOutOf(number)}
        onPress={() => {
          handle.removeRows([leftover.id]);
          onLeftOut();
        }}
      >
        {texts.leaveOut}
      </Button>
    </div>
  );
}
