import { useEffect, useState } from "react";
import type { ProjectProblem } from "../../../files/index.ts";
import type { TakenIn } from "../../../store/index.ts";
import { go, usePreferences, useStore } from "../../frame/index.ts";
import { nextPage, stageOf } from "./stage.ts";

/** A file that is no project, with the reasons. */
export type NotOpened = { readonly file: string; readonly problems: readonly ProjectProblem[] };

type Outcome = { readonly notOpened: NotOpened | null; readonly takenIn: TakenIn | null };
const nothing: Outcome = { notOpened: null, takenIn: null };

/**
 * Opens a `.verso` file: a back as a project of its own, or everything of another device. Where that can't be done,
 * nothing changes and it is said why.
 */
export function useOpenFile() {
  const store = useStore();
  const [, preferences] = usePreferences();
  const [outcome, setOutcome] = useState(nothing);
  const open = async (file: File) => {
    setOutcome(nothing);
    const { takeIn } = await import("./takeIn.ts");
    const taken = await takeIn(store, file);
    if (!taken.ok) return setOutcome({ ...nothing, notOpened: { file: file.name, problems: taken.error } });
    if (taken.value.kind === "everything") return setOutcome({ ...nothing, takenIn: taken.value.takenIn });
    const { id, state } = taken.value.project;
    preferences.copied([id], Date.now());
    go({ screen: nextPage(stageOf(state().project)), project: id });
  };
  return { ...outcome, open: (file: File) => void open(file), forget: () => setOutcome(nothing) };
}

/** Files may be dropped anywhere. Whether one is held over the page. */
export function useFileOver(): boolean {
  const [isOver, setOver] = useState(false);
  useEffect(() => {
    const over = (event: DragEvent) => event.dataTransfer?.types.includes("Files") && setOver(true);
    const left = ({ relatedTarget }: DragEvent) => relatedTarget === null && setOver(false);
    const dropped = () => setOver(false);
    const heard = { dragover: over, dragleave: left, drop: dropped };
    for (const [name, listener] of Object.entries(heard)) addEventListener(name, listener as EventListener);
    return () => {
      for (const [name, listener] of Object.entries(heard))
        removeEventListener(name, listener as EventListener);
    };
  }, []);
  return isOver;
}
