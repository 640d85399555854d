import { type DragEvent, type ReactNode, useState } from "react";
import styles from "./photo.module.css";
import { usePhotoTexts, useTable } from "./tableFor.ts";

/** Photos may be let go anywhere on the page. The button does the same. */
export function DropPhotos({ children }: { readonly children: ReactNode }) {
  const texts = usePhotoTexts();
  const table = useTable();
  const [isOver, setOver] = useState(false);
  const over = (event: DragEvent) => {
    if (!event.dataTransfer.types.includes("Files")) return;
    event.preventDefault();
    setOver(true);
  };
  const drop = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    table.addPhotos([...event.dataTransfer.files]);
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
