import { useEffect, useState, useSyncExternalStore } from "react";
import type { Project } from "../../files/index.ts";
import type { ProjectHandle } from "../../store/index.ts";
import { useStore } from "../frame/index.ts";

/** The shelf, once it is open. It is held open from then on: what was moved there follows undo. */
export function useShelf(): ProjectHandle | null {
  const store = useStore();
  const [shelf, setShelf] = useState<ProjectHandle | null>(null);
  useEffect(() => {
    let here = true;
    void store.shelf().then((opened) => here && setShelf(opened));
    return () => {
      here = false;
    };
  }, [store]);
  return shelf;
}

const noListening = () => () => {};

/** What lies on it now; `null`: it isn't open yet. */
export function useOnShelf(shelf: ProjectHandle | null): Project | null {
  return useSyncExternalStore(shelf?.subscribe ?? noListening, () => shelf?.state().project ?? null);
}
