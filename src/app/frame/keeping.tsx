import { useEffect, useRef } from "react";
import { Button } from "react-aria-components";
import styles from "./bars.module.css";
import { holdFocus } from "./heldFocus.ts";
import { keepsApart } from "./keptApart.ts";
import {
  useFrameWords,
  usePreferences,
  useProject,
  useProjectState,
  useSaveProject,
  useStore,
  useStoreState,
} from "./surroundings.ts";

/** So many edits without a copy of her own are worth a word. */
const muchChange = 300;

/**
 * Care for what she has made: the browser is asked to keep it, and she is reminded of a file of her own; and for her
 * place on the page.
 */
export default function Keeping() {
  useCountedChanges();
  useAskedToPersist();
  useEffect(() => holdFocus(document.body), []);
  return (
    <div role="status" className={styles.notices}>
      <Reminder />
      <KeptApart />
    </div>
  );
}

/** Counts her edits of this project since it last left as a file. Trying things on the sample is no work to lose. */
function useCountedChanges(): void {
  const project = useProject();
  const [, preferences] = usePreferences();
  const { project: value } = useProjectState();
  const last = useRef(value);
  useEffect(() => {
    if (last.current === value) return;
    last.current = value;
    if (!value.sample) preferences.changed(project.id);
  }, [value, preferences, project.id]);
}

function useIsKept(): boolean {
  const { project, saving, canUndo } = useProjectState();
  return canUndo && saving.kind === "steady" && !project.sample;
}

/** After the first edit that is kept: whoever only looks around is asked for nothing. */
function useAskedToPersist(): void {
  const store = useStore();
  const { persisted } = useStoreState();
  const [{ askedToPersist }, preferences] = usePreferences();
  const isTime = useIsKept() && persisted === false && !askedToPersist;
  useEffect(() => {
    if (!isTime) return;
    preferences.change({ askedToPersist: true });
    void store.askToPersist();
  }, [isTime, preferences, store]);
}

function Reminder() {
  const words = useFrameWords();
  const project = useProject();
  const save = useSaveProject();
  const [{ copies }, preferences] = usePreferences();
  const copy = copies[project.id];
  if (copy === undefined || copy.changes < muchChange) return null;
  const putOff = () =>
    preferences.change({ copies: { ...copies, [project.id]: { at: copy.at, changes: 0 } } });
  return (
    <div className={styles.bar}>
      <p>{words.copyOutside}</p>
      <span className={styles.ways}>
        <Button className="button" onPress={() => save(project)}>
          {words.saveFileNow}
        </Button>
        <Button className="button plain" onPress={putOff}>
          {words.updateLater}
        </Button>
      </span>
    </div>
  );
}

/** Said once, where the system gives a tab and the installed app each a store of its own. */
function KeptApart() {
  const words = useFrameWords();
  const [{ saidApart }, preferences] = usePreferences();
  const isTime = useIsKept() && !saidApart && keepsApart();
  if (!isTime) return null;
  return (
    <div className={styles.bar}>
      <p>{words.keptApart}</p>
      <Button className="button" onPress={() => preferences.change({ saidApart: true })}>
        {words.understood}
      </Button>
    </div>
  );
}
