import { memo, useMemo, useState } from "react";
import { Button } from "react-aria-components";
import { type ProjectHandle, takeFromShelf } from "../../../store/index.ts";
import { shelfTexts } from "../../../words/index.ts";
import { useProject, useProjectPart } from "../../frame/index.ts";
import { useOnShelf, useShelf } from "../../parts/shelf.ts";
import { useTexts } from "../../parts/texts.ts";
import styles from "./fromShelf.module.css";
import { type ShelfRow, shelfRows } from "./shelfRows.ts";

type FromShelfProps = { readonly say: (text: string) => void };

/** What earlier quilts left over, to tick off what joins this heap. Where nothing lies there, nothing is shown. */
export const FromShelf = memo(function FromShelf({ say }: FromShelfProps) {
  const texts = useTexts(shelfTexts);
  const shelf = useShelf();
  const lying = useOnShelf(shelf);
  const [isOpen, setOpen] = useState(false);
  const [canLayBack, setCanLayBack] = useState(false);
  const count = lying?.leftovers.length ?? 0;
  if (shelf === null || (count === 0 && !canLayBack)) return null;
  return (
    <div className={styles.shelf}>
      <Button className="button plain" aria-expanded={isOpen} onPress={() => setOpen(!isOpen)}>
        {texts.shelf(count)}
      </Button>
      {isOpen && count > 0 && <Shelf shelf={shelf} say={say} onTakenOff={() => setCanLayBack(true)} />}
      {canLayBack && (
        <Button
          className="button"
          onPress={() => {
            shelf.undo();
            setCanLayBack(false);
          }}
        >
          {texts.layBack}
        </Button>
      )}
    </div>
  );
});

type ShelfProps = FromShelfProps & { readonly shelf: ProjectHandle; readonly onTakenOff: () => void };

function Shelf({ shelf, say, onTakenOff }: ShelfProps) {
  const texts = useTexts(shelfTexts);
  const project = useProject();
  const settings = useProjectPart((now) => now.settings);
  const lying = useOnShelf(shelf);
  const [ticked, setTicked] = useState<ReadonlySet<string>>(new Set());
  const rows = useMemo(() => (lying === null ? [] : shelfRows({ ...lying, settings })), [lying, settings]);
  const chosen = rows.filter(({ id }) => ticked.has(id)).map(({ id }) => id);
  const tick = (id: string) => {
    const now = new Set(chosen);
    if (!now.delete(id)) now.add(id);
    setTicked(now);
  };
  const join = async () => say(texts.joined(await takeFromShelf(shelf, project, chosen)));
  const takeOff = () => {
    shelf.removeRows(chosen);
    say(texts.takenOff(chosen.length));
    onTakenOff();
  };
  return (
    <section className={styles.panel} aria-label={texts.shelf(rows.length)}>
      <p className={styles.quiet}>{texts.shelfWhat}</p>
      <ul className={styles.rows}>
        {rows.map((row) => (
          <OnShelf key={row.id} row={row} isTicked={ticked.has(row.id)} onTick={() => tick(row.id)} />
        ))}
      </ul>
      <div className={styles.ways}>
        <Button className="button" isDisabled={chosen.length === 0} onPress={() => void join()}>
          {texts.join(chosen.length)}
        </Button>
        {chosen.length > 0 && (
          <Button className="button plain" onPress={takeOff}>
            {texts.takeOff}
          </Button>
        )}
      </div>
    </section>
  );
}

type OnShelfProps = { readonly row: ShelfRow; readonly isTicked: boolean; readonly onTick: () => void };

function OnShelf({ row, isTicked, onTick }: OnShelfProps) {
  const texts = useTexts(shelfTexts);
  return (
    <li>
      <label className={styles.row}>
        <input type="checkbox" checked={isTicked} onChange={onTick} />
        <svg className={`cloth ${styles.swatch}`} viewBox="0 0 1 1" aria-hidden="true">
          <rect width="1" height="1" fill={row.colour ?? "none"} />
        </svg>
        <span>{row.piece === null ? row.text : texts.row(row.piece)}</span>
        <span className={styles.quiet}>{row.note}</span>
      </label>
    </li>
  );
}
