import { useEffect, useState } from "react";
import { largestProjectFile, type ProjectProblem } from "../../../files/index.ts";
import { go, useStore } from "../../frame/index.ts";
import { nextPage, stageOf } from "./stage.ts";

/** A file that is no project, with the reasons. */
export type NotOpened = { readonly file: string; readonly problems: readonly ProjectProblem[] };

/** Opens a `.verso` file as a project of its own; where that can't be done, nothing changes and it is said why. */
export function useOpenFile() {
  const store = useStore();
  const [notOpened, setNotOpened] = useState<NotOpened | null>(null);
  const open = async (file: File) => {
    setNotOpened(null);
    const bytes = await bytesOf(file);
    const opened =
      bytes === null
        ? {
            ok: false as const,
            error: [{ path: "", kind: "file-too-large", most: largestProjectFile }] as const,
          }
        : await store.importFile(bytes);
    if (!opened.ok) return setNotOpened({ file: file.name, problems: opened.error });
    const { id } = opened.value;
    go({ screen: nextPage(stageOf(opened.value.state().project)), project: id });
  };
  return { open: (file: File) => void open(file), notOpened, forget: () => setNotOpened(null) };
}

async function bytesOf(file: File): Promise<Uint8Array | null> {
  return file.size > largestProjectFile ? null : new Uint8Array(await file.arrayBuffer());
}

/** Files may be dropped anywhere on the page. Whether one is held over it. */
export function useDroppedFile(open: (file: File) => void): boolean {
  const [isOver, setOver] = useState(false);
  useEffect(() => {
    const over = (event: DragEvent) => {
      if (!event.dataTransfer?.types.includes("Files")) return;
      event.preventDefault();
      setOver(true);
    };
    const left = ({ relatedTarget }: DragEvent) => relatedTarget === null && setOver(false);
    const dropped = (event: DragEvent) => {
      event.preventDefault();
      setOver(false);
      const file = event.dataTransfer?.files[0];
      if (file !== undefined) open(file);
    };
    const heard = { dragover: over, dragleave: left, drop: dropped };
    for (const [name, listener] of Object.entries(heard)) addEventListener(name, listener as EventListener);
    return () => {
      for (const [name, listener] of Object.entries(heard))
        removeEventListener(name, listener as EventListener);
    };
  });
  return isOver;
}
