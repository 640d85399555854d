import { type DragEvent, type ReactNode, useState } from "react";
import { Button, FileTrigger } from "react-aria-components";
import { fileNameFor, saveFile, useProjectState } from "../../frame/index.ts";
import { useLeftoversTexts } from "./heapContext.ts";
import styles from "./many.module.css";
import { tableOf } from "./tableOut.ts";

/** A table in. */
export function Many({ onFile }: { readonly onFile: (file: File) => void }) {
  const texts = useLeftoversTexts();
  return (
    <div className={styles.many}>
      <p>{texts.many}</p>
      <FileTrigger
        acceptedFileTypes={[".csv", ".tsv", ".txt", "text/csv", "text/plain"]}
        onSelect={(files) => files?.[0] !== undefined && onFile(files[0])}
      >
        <Button className="button plain">{texts.openTable}</Button>
      </FileTrigger>
    </div>
  );
}

/** A table out. */
export function TableOut() {
  const texts = useLeftoversTexts();
  const { project } = useProjectState();
  const save = () => {
    const name = fileNameFor(texts.tableName(project.title)).replace(/\.verso$/, ".csv");
    saveFile(tableOf(project), name);
  };
  return (
    <div className={styles.many}>
      <p>{texts.saveTableWhat}</p>
      <Button className="button plain" onPress={save}>
        {texts.saveTable}
      </Button>
    </div>
  );
}

type DropPlaceProps = { readonly onFile: (file: File) => void; readonly children: ReactNode };

/** A file may be let go anywhere on the page. The button does the same. */
export function DropPlace({ onFile, children }: DropPlaceProps) {
  const texts = useLeftoversTexts();
  const [isOver, setOver] = useState(false);
  const over = (event: DragEvent) => {
    if (!event.dataTransfer.types.includes("Files")) return;
    event.preventDefault();
    setOver(true);
  };
  const drop = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    const [file] = event.dataTransfer.files;
    if (file !== undefined) onFile(file);
  };
  const leave = ({ currentTarget, relatedTarget }: DragEvent) => {
    if (!(relatedTarget instanceof Node) || !currentTarget.contains(relatedTarget)) setOver(false);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: there is a button for the same
    <div className={styles.place} onDragOver={over} onDragLeave={leave} onDrop={drop}>
      {children}
      {isOver && <p className={styles.drop}>{texts.dropHere}</p>}
    </div>
  );
}
