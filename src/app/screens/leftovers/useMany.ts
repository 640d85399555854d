import { useMemo, useState } from "react";
import type { TableProblem } from "../../../files/index.ts";
import { mostOf } from "../../../files/index.ts";
import { useProject } from "../../frame/index.ts";
import { knownFabrics, pasted } from "./entry.ts";
import { heapOf } from "./heap.ts";
import { useLeftoversTexts } from "./heapContext.ts";

/** Takes in lines or a table; what can't be read as a whole is told until the next one. */
export function useMany(say: (text: string) => void) {
  const texts = useLeftoversTexts();
  const handle = useProject();
  const [problem, setProblem] = useState<TableProblem | null>(null);
  const ways = useMemo(() => {
    const takeBytes = (bytes: Uint8Array) => {
      const { project } = handle.state();
      const many = pasted(bytes, project.settings.unit, knownFabrics(project));
      setProblem(many.problem);
      if (many.problem !== null) return say(texts.notEntered(many.problem));
      const rows = many.rows.slice(0, Math.max(0, mostOf.rows - project.leftovers.length));
      const waited = heapOf(project).waiting.length;
      if (rows.length > 0) handle.addRows(rows);
      for (const stock of many.rough) handle.addRough(stock);
      const waits = heapOf(handle.state().project).waiting.length - waited;
      say(texts.entered(rows.length + many.rough.length - waits, waits));
    };
    return {
      takeText: (text: string) => takeBytes(new TextEncoder().encode(text)),
      takeFile: async (file: Blob) => takeBytes(new Uint8Array(await file.arrayBuffer())),
    };
  }, [handle, texts, say]);
  return { problem, ...ways };
}
