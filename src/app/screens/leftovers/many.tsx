import { type DragEvent, memo, type ReactNode, useMemo, useState } from "react";
import { Button, FileTrigger } from "react-aria-components";
import { canShare, fileNameFor, giveFile, hrefOf, useProject, useProjectPart } from "../../frame/index.ts";
import { useLeftoversTexts } from "./heapContext.ts";
import styles from "./many.module.css";
import { tableOf } from "./tableOut.ts";

/** Other ways in: a table, photos. */
export function Many({ onFile }: { readonly onFile: (file: File) => void }) {
  const texts = useLeftoversTexts();
  const { id } = useProject();
  return (
    <div className={styles.many}>
      <p>{texts.many}</p>
      <FileTrigger
        acceptedFileTypes={[".csv", ".tsv", ".txt", "text/csv", "text/plain"]}
        onSelect={(files) => files?.[0] !== undefined && onFile(files[0])}
      >
        <Button className="button plain">{texts.openTable}</Button>
      </FileTrigger>
      <a className="button plain" href={hrefOf({ screen: "photo", project: id })}>
        {texts.fromPhoto}
      </a>
    </div>
  );
}

/** A table out. */
export const TableOut = memo(function TableOut() {
  const texts = useLeftoversTexts();
  const handle = useProject();
  const title = useProjectPart((now) => now.title);
  const name = fileNameFor(texts.tableName(title)).replace(/\.verso$/, ".csv");
  const canBeShared = useMemo(() => canShare(name, "text/csv"), [name]);
  const save = () => giveFile(tableOf(handle.state().project), name, "text/csv");
  return (
    <div className={styles.many}>
      <p>{texts.saveTableWhat}</p>
      <Button className="button plain" onPress={save}>
        {canBeShared ? texts.shareTable : texts.saveTable}
      </Button>
    </div>
  );
});

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
    setOver(false);
    const [file] = event.dataTransfer.files;
    // A back opens by itself wherever it is let go of.
    if (file?.name.endsWith(".verso")) return;
    event.preventDefault();
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
