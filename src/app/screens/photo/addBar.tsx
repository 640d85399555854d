import { Button } from "react-aria-components";
import type { NewLeftover } from "../../../files/index.ts";
import { useProject, useProjectContent } from "../../frame/index.ts";
import styles from "./photo.module.css";
import { countOf, isReady, nameKey, rowsOf, type TableCloth, type TablePiece } from "./pieces.ts";
import { usePhotoTexts, useTable, useTableState } from "./tableFor.ts";

type AddBarProps = { readonly pieces: readonly TablePiece[]; readonly say: (text: string) => void };

/** What is ticked goes into the heap, all at once and only now. */
export function AddBar({ pieces, say }: AddBarProps) {
  const texts = usePhotoTexts();
  const table = useTable();
  const handle = useProject();
  const { cloths } = useTableState();
  const nameOf = useClothNames();
  const ready = pieces.filter(isReady);
  const unready = pieces.filter(({ isTaken }) => isTaken).length - ready.length;
  const count = ready.reduce((sum, piece) => sum + (countOf(piece) ?? 0), 0);
  const add = async () => {
    const { project } = handle.state();
    const rows = rowsOf({ pieces: ready, cloths }, { unit: project.settings.unit, nameOf, project });
    const pictures = await Promise.all(rows.map(({ cutOut }) => table.pictureAt(cutOut)));
    const kept = await handle.addPictures(pictures);
    const ids = handle.addRows(rows.map(({ row }, at) => withPicture(row, kept[at] ?? null)));
    table.enter(
      new Map(rows.flatMap((row, at) => row.pieces.map((piece) => [piece, ids[at] ?? ""] as const))),
    );
    say(texts.added(count, rows.length));
  };
  if (pieces.length === 0) return null;
  return (
    <div className={styles.bar}>
      <Button className="button next" isDisabled={count === 0} onPress={() => void add()}>
        {texts.add(count)}
      </Button>
      {unready > 0 && <p>{texts.needsSize(unready)}</p>}
      {count === 0 && unready === 0 && <p>{texts.noneTaken}</p>}
    </div>
  );
}

function withPicture(row: NewLeftover, picture: string | null): NewLeftover {
  return picture === null ? row : { ...row, picture };
}

/** What each cloth is called; without a name of hers, one that no other fabric in the heap has. */
export function useClothNames(): (cloth: TableCloth) => string {
  const texts = usePhotoTexts();
  const { leftovers } = useProjectContent();
  const { entered, pieces } = useTableState();
  // Those that came from this table may be joined by more of the same cloth.
  const ownRows = new Set(entered.values());
  const taken = new Set(
    leftovers.filter(({ id }) => !ownRows.has(id)).map(({ cells }) => nameKey(cells.fabric?.text ?? "")),
  );
  let shift = 0;
  const most = pieces.length + 1;
  while (
    Array.from({ length: most }, (_, n) => texts.cloth(n + 1 + shift)).some((name) =>
      taken.has(nameKey(name)),
    )
  )
    shift += 1;
  return ({ name, number }) => (name.trim() === "" ? texts.cloth(number + shift) : name.trim());
}
