import { useMemo, useState } from "react";
import { shelfTexts } from "../../../words/index.ts";
import { hrefOf, useProject, useProjectState } from "../../frame/index.ts";
import { useTexts } from "../../parts/texts.ts";
import { About } from "./about.tsx";
import { ChosenBar } from "./chosenBar.tsx";
import { Fabrics } from "./fabrics.tsx";
import { FromShelf } from "./fromShelf.tsx";
import { heapOf } from "./heap.ts";
import { HeapContext, useHeap, useLeftoversTexts } from "./heapContext.ts";
import styles from "./leftovers.module.css";
import { LineEntry } from "./lineEntry.tsx";
import { HeapList } from "./list.tsx";
import { DropPlace, Many, TableOut } from "./many.tsx";
import { Mend } from "./mend.tsx";
import { Piles } from "./piles.tsx";
import { useChosen } from "./useChosen.ts";
import { useMany } from "./useMany.ts";
import { useView, Views } from "./views.tsx";

/** What is left over: entered line by line or many at once, mended, sorted in piles, marked. */
export default function Leftovers() {
  const { project } = useProjectState();
  const heap = useMemo(() => heapOf(project), [project]);
  return (
    <HeapContext value={heap}>
      <Page />
    </HeapContext>
  );
}

function Page() {
  const texts = useLeftoversTexts();
  const { id } = useProject();
  const { leftovers, rough } = useProjectState().project;
  const [said, say] = useState("");
  const [isTyping, setTyping] = useState(false);
  const many = useMany(say);
  const isEmpty = leftovers.length === 0 && rough.length === 0;
  return (
    <DropPlace onFile={many.takeFile}>
      <div className={styles.page}>
        <header className={styles.head}>
          <h1>{texts.title}</h1>
          {!isEmpty && (
            <a className={isTyping ? "button" : "button next"} href={hrefOf({ screen: "plan", project: id })}>
              {texts.goOn}
            </a>
          )}
          <Summary isEmpty={isEmpty} />
        </header>
        <div className={styles.entry}>
          <LineEntry say={say} onMany={many.takeText} isEmpty={isEmpty} onTyping={setTyping}>
            <Many onFile={many.takeFile} />
          </LineEntry>
          {many.problem !== null && <p className={styles.trouble}>{texts.notEntered(many.problem)}</p>}
          <p role="status" className={many.problem === null ? styles.said : "onlyRead"}>
            {said}
          </p>
          <FromShelf say={say} />
        </div>
        <Mend say={say} />
        <TheHeap isEmpty={isEmpty} say={say} />
      </div>
    </DropPlace>
  );
}

function Summary({ isEmpty }: { readonly isEmpty: boolean }) {
  const texts = useLeftoversTexts();
  const { count, rows, area, stop } = useHeap();
  if (stop !== null) return <p>{texts.stop(stop)}</p>;
  return (
    <p className={styles.summary}>
      {isEmpty ? texts.nothingYet : texts.summary({ count, rows: rows.length, area })}
    </p>
  );
}

type TheHeapProps = { readonly isEmpty: boolean; readonly say: (text: string) => void };

/** The heap, looked at from all sides. */
function TheHeap({ isEmpty, say }: TheHeapProps) {
  const texts = useLeftoversTexts();
  const { views, view, setView, shows } = useView();
  const shelfWords = useTexts(shelfTexts);
  const { chosen, choose, toggle, mark, remove, shelve } = useChosen();
  return (
    <>
      {!isEmpty && <Views views={views} view={view} onView={setView} />}
      <div className={styles.heap} data-view={view}>
        {shows("list") && !isEmpty && (
          <div className={styles.list}>
            <HeapList chosen={chosen} onChoose={choose} />
          </div>
        )}
        {shows("piles") && !isEmpty && (
          <div className={styles.piles}>
            <Piles chosen={chosen} onToggle={toggle} onMark={mark} />
          </div>
        )}
        <div className={styles.side}>
          {shows("fabrics") && !isEmpty && <Fabrics />}
          {(shows("about") || isEmpty) && <About />}
          {shows("about") && !isEmpty && <TableOut />}
        </div>
      </div>
      {chosen.size > 0 && (
        <ChosenBar
          chosen={chosen}
          onMark={(use) => mark(chosen, use)}
          onRemove={() => say(texts.removed(remove()))}
          onShelve={() => void shelve().then((count) => say(shelfWords.movedToShelf(count)))}
          onNone={() => choose(new Set())}
        />
      )}
    </>
  );
}
