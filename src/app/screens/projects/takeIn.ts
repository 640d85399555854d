import { err, ok, type Result } from "../../../engine/length/index.ts";
import { isEverything, largestEverything, type ProjectProblem } from "../../../files/index.ts";
import { importEverything, type ProjectHandle, type Store, type TakenIn } from "../../../store/index.ts";

export type Taken =
  | { readonly kind: "back"; readonly project: ProjectHandle }
  | { readonly kind: "everything"; readonly takenIn: TakenIn };

/** What a file holds, taken into the store; or why it can't be. */
export async function takeIn(store: Store, file: File): Promise<Result<Taken, readonly ProjectProblem[]>> {
  if (file.size > largestEverything) {
    return err([{ path: "", kind: "file-too-large", most: largestEverything }]);
  }
  const bytes = new Uint8Array(await file.arrayBuffer());
  if (isEverything(bytes)) {
    const taken = await importEverything(store, bytes);
    return taken.ok ? ok({ kind: "everything", takenIn: taken.value }) : taken;
  }
  const opened = await store.importFile(bytes);
  return opened.ok ? ok({ kind: "back", project: opened.value }) : opened;
}
