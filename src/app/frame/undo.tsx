import { useEffect, useSyncExternalStore } from "react";
import { Button } from "react-aria-components";
import type { ProjectHandle } from "../../store/index.ts";
import styles from "./frame.module.css";
import { useFrameWords, useProject } from "./surroundings.ts";

/** Back and forth through her own edits, by two buttons and by the usual keys. */
export function Undo() {
  const words = useFrameWords();
  const project = useProject();
  const canUndo = useStateOf(project, "canUndo");
  const canRedo = useStateOf(project, "canRedo");
  useUndoKeys(project);
  return (
    <div className={styles.undo}>
      <Button className="button plain" isDisabled={!canUndo} onPress={() => project.undo()}>
        {words.undo}
      </Button>
      <Button className="button plain" isDisabled={!canRedo} onPress={() => project.redo()}>
        {words.redo}
      </Button>
    </div>
  );
}

/** Saving says so with each edit, twice: that is no concern of the buttons. */
function useStateOf(project: ProjectHandle, name: "canUndo" | "canRedo"): boolean {
  return useSyncExternalStore(project.subscribe, () => project.state()[name]);
}

function useUndoKeys(project: ProjectHandle): void {
  useEffect(() => {
    const pressed = (event: KeyboardEvent) => {
      const way = wayOf(event);
      if (way === null) return;
      event.preventDefault();
      project[way]();
    };
    addEventListener("keydown", pressed);
    return () => removeEventListener("keydown", pressed);
  }, [project]);
}

function wayOf(event: KeyboardEvent): "undo" | "redo" | null {
  if (!(event.ctrlKey || event.metaKey) || event.altKey || writes(event.target)) return null;
  const key = event.key.toLowerCase();
  if (key === "z") return event.shiftKey ? "redo" : "undo";
  return key === "y" && !event.shiftKey ? "redo" : null;
}

/** A field that is being written in has its own way back, letter by letter. */
function writes(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  if (target instanceof HTMLInputElement)
    return !["checkbox", "radio", "button", "range"].includes(target.type);
  return target instanceof HTMLTextAreaElement || target.isContentEditable;
}
