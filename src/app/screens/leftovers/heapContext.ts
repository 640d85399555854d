import { createContext, useContext } from "react";
import { leftoversTexts } from "../../../words/index.ts";
import { useTexts } from "../../parts/texts.ts";
import type { Heap } from "./heap.ts";

/** The heap of the open project, sorted once for all that show a part of it. */
export const HeapContext = createContext<Heap | null>(null);

export function useHeap(): Heap {
  const heap = useContext(HeapContext);
  if (heap === null) throw new Error("a part of the heap stands outside of it");
  return heap;
}

export function useLeftoversTexts() {
  return useTexts(leftoversTexts);
}
