import { useEffect } from "react";
import { Button } from "react-aria-components";
import type { ProjectHandle, ProjectState } from "../../store/index.ts";
import styles from "./bars.module.css";
import { useFrameWords, useProject, useProjectState, useSaveProject } from "./surroundings.ts";

/** Says only what isn't steady, and stays until it is. There is always a way out: a file of one's own. */
export function SavingNotice() {
  const words = useFrameWords();
  const project = useProject();
  const state = useProjectState();
  const save = useSaveProject();
  const text = useTextFor(state);
  useAskBeforeLeaving(state.saving.kind !== "steady");
  return (
    // It is there before there is anything to say, so that what comes is read aloud.
    <div role="status" className={styles.notices}>
      {text !== null && (
        <div className={styles.bar}>
          <p>
            {state.saving.kind === "not-saved" && <strong>{words.notSaved}</strong>} {text}
          </p>
          <span className={styles.ways}>
            <Button className="button" onPress={() => save(project)}>
              {words.saveFileNow}
            </Button>
            {state.saving.kind === "not-saved" && <OtherWay state={state} project={project} />}
          </span>
        </div>
      )}
    </div>
  );
}

/** While something isn't kept, the browser asks before it lets go of the page. */
function useAskBeforeLeaving(isNeeded: boolean): void {
  useEffect(() => {
    if (!isNeeded) return;
    const ask = (event: BeforeUnloadEvent) => event.preventDefault();
    addEventListener("beforeunload", ask);
    return () => removeEventListener("beforeunload", ask);
  }, [isNeeded]);
}

function OtherWay({ state, project }: { readonly state: ProjectState; readonly project: ProjectHandle }) {
  const words = useFrameWords();
  if (state.saving.kind !== "not-saved" || state.saving.why === "no-storage") return null;
  return state.saving.why === "newer-tab" ? (
    <Button className="button" onPress={() => location.reload()}>
      {words.loadAnew}
    </Button>
  ) : (
    <Button className="button" onPress={() => project.saveAgain()}>
      {words.tryAgain}
    </Button>
  );
}

function useTextFor(state: ProjectState): string | null {
  const words = useFrameWords();
  if (state.gone) return words.gone;
  if (state.saving.kind === "not-saved") return words.notSavedWhy(state.saving.why);
  if (state.readOnly) return words.readOnly;
  return state.problems.length > 0 ? words.someMissing : null;
}
