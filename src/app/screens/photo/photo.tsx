import { useState } from "react";
import { hrefOf, useProject, useProjectContent } from "../../frame/index.ts";
import { AddBar } from "./addBar.tsx";
import { Before } from "./before.tsx";
import { DropPhotos } from "./dropPhotos.tsx";
import { KeptPhotos } from "./keptPhotos.tsx";
import { useMarking } from "./marking.ts";
import styles from "./photo.module.css";
import { Photos } from "./photos.tsx";
import { PieceList } from "./pieceList.tsx";
import { TableContext, useOwnTable, usePhotoTexts, useTableState } from "./tableFor.ts";

/** Leftovers from photos: measured on this device, looked through, and entered when she says so. */
export default function FromPhotos() {
  return (
    <TableContext value={useOwnTable()}>
      <Page />
    </TableContext>
  );
}

function Page() {
  const texts = usePhotoTexts();
  const { id } = useProject();
  const state = useTableState();
  const [chosen, choose] = useState<string | null>(null);
  const [said, say] = useState("");
  const pieces = useShownPieces();
  const marking = useMarking();
  const selection = { chosen: pieces.some((piece) => piece.id === chosen) ? chosen : null, choose };
  return (
    <DropPhotos>
      <div className={styles.page}>
        <header className={styles.head}>
          <a href={hrefOf({ screen: "leftovers", project: id })}>{texts.back}</a>
          <h1>{texts.title}</h1>
          <p>{texts.what}</p>
        </header>
        <Before isOpen={state.photos.length === 0} />
        <p role="status" className={said === "" ? "onlyRead" : styles.said}>
          {said}
        </p>
        {said !== "" && pieces.length === 0 && (
          // The button she pressed is gone with the pieces: she goes on from here.
          <a
            className={`button next ${styles.goOn}`}
            href={hrefOf({ screen: "leftovers", project: id })}
            ref={(way) => way?.focus()}
          >
            {texts.toList}
          </a>
        )}
        {(state.photos.length > 0 || state.canTakeBack) && (
          <div className={styles.table}>
            <Photos pieces={pieces} selection={selection} marking={marking} />
            <PieceList pieces={pieces} selection={selection} marking={marking} />
          </div>
        )}
        <KeptPhotos />
        <AddBar pieces={pieces} say={say} />
      </div>
    </DropPhotos>
  );
}

/** Those that are not in the heap: what she takes back out of it lies here again. */
function useShownPieces() {
  const { pieces, entered } = useTableState();
  const { leftovers } = useProjectContent();
  return pieces.filter((piece) => {
    const row = entered.get(piece.id);
    return row === undefined || !leftovers.some(({ id }) => id === row);
  });
}
