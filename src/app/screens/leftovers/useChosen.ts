import { startTransition, useCallback, useMemo, useState } from "react";
import type { Use } from "../../../engine/cloth/index.ts";
import { moveToShelf } from "../../../store/index.ts";
import { useProject, useStore } from "../../frame/index.ts";
import { useHeap } from "./heapContext.ts";
import { type Chosen, withTurned } from "./useGridChoice.ts";

/** The rows that are chosen, in the list and in the piles alike. A row that is gone is no longer chosen. */
export function useChosen() {
  const handle = useProject();
  const store = useStore();
  const { leftovers } = useHeap().project;
  const [picked, choose] = useState<Chosen>(new Set());
  const chosen = useMemo(() => {
    return new Set(leftovers.flatMap(({ id }) => (picked.has(id) ? [id] : [])));
  }, [leftovers, picked]);
  const toggle = useCallback((id: string) => choose((now) => withTurned(now, id)), []);
  const mark = useCallback(
    (rows: Iterable<string>, use: Use) => {
      // The usual mark is a blank cell, as in a table that says nothing.
      const cell = use === "yes" ? null : { text: use, value: use };
      handle.changeRows([...rows], { cells: { use: cell } });
    },
    [handle],
  );
  return {
    chosen,
    choose,
    toggle,
    mark,
    /** Off this heap and onto the shelf. How many rows. */
    shelve: async () => {
      const count = await moveToShelf(await store.shelf(), handle, [...chosen]);
      choose(new Set());
      return count;
    },
    remove: () => {
      handle.removeRows([...chosen]);
      // With the rows themselves, which the heap is drawn without a moment later.
      startTransition(() => choose(new Set()));
      return chosen.size;
    },
  };
}
