import { Activity, memo, type ReactNode, useDeferredValue, useMemo, useState } from "react";
import { shelfTexts } from "../../../words/index.ts";
import { hrefOf, useProject, useProjectContent, useProjectPart } from "../../frame/index.ts";
import { useTexts } from "../../parts/texts.ts";
import { About } from "./about.tsx";
import { ChosenBar } from "./chosenBar.tsx";
import { Fabrics } from "./fabrics.tsx";
import { FromShelf } from "./fromShelf.tsx";
import { heapSorter } from "./heap.ts";
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
  // Her line is entered and the next one begun before hundreds of rows are sorted and drawn anew.
  const project = useDeferredValue(useProjectContent());
  const [sorted] = useState(heapSorter);
  const heap = useMemo(() => sorted(project), [sorted, project]);
  return (
    <HeapContext value={heap}>
      <Page />
    </HeapContext>
  );
}

function Page() {
  const texts = useLeftoversTexts();
  const { id } = useProject();
  const isEmpty = useProjectPart(({ leftovers, rough }) => leftovers.length === 0 && rough.length === 0);
  const [said, say] = useState("");
  const [isTyping, setTyping] = useState(false);
  const many = useMany(say);
  const { takeFile } = many;
  const otherWays = useMemo(() => <Many onFile={takeFile} />, [takeFile]);
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
            {otherWays}
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

/** The heap, looked at from all sides. What she types above it is no concern of it. */
const TheHeap = memo(function TheHeap({ isEmpty, say }: TheHeapProps) {
  const texts = useLeftoversTexts();
  const { views, view, shown, setView, shows } = useView();
  const shelfWords = useTexts(shelfTexts);
  const { chosen, choose, toggle, mark, remove, shelve } = useChosen();
  return (
    <>
      {!isEmpty && <Views views={views} view={view} onView={setView} />}
      <div className={styles.heap} data-view={shown}>
        {!isEmpty && (
          <Part isShown={shows("list")}>
            <div className={styles.list}>
              <HeapList chosen={chosen} onChoose={choose} />
            </div>
          </Part>
        )}
        {!isEmpty && (
          <Part isShown={shows("piles")}>
            <div className={styles.piles}>
              <Piles chosen={chosen} onToggle={toggle} onMark={mark} />
            </div>
          </Part>
        )}
        <div className={styles.side} hidden={!(isEmpty || shows("fabrics") || shows("about"))}>
          {!isEmpty && (
            <Part isShown={shows("fabrics")}>
              <Fabrics />
            </Part>
          )}
          <Part isShown={shows("about") || isEmpty}>
            <About />
            {!isEmpty && <TableOut />}
          </Part>
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
});

type PartProps = { readonly isShown: boolean; readonly children: ReactNode };

/** What isn't shown is drawn too, once there is nothing else to do: then it is there at a press. */
function Part({ isShown, children }: PartProps) {
  return <Activity mode={isShown ? "visible" : "hidden"}>{children}</Activity>;
}
