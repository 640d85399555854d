import { createContext, useContext, useMemo, useSyncExternalStore } from "react";
import { photoTexts } from "../../../words/index.ts";
import { useLocale, usePreferences, useProject } from "../../frame/index.ts";
import { paperFor } from "../../parts/paper.ts";
import { useTexts } from "../../parts/texts.ts";
import { correctBeside, measureBeside } from "../../worker/photo/measurePhotos.ts";
import { PhotoTable } from "./table.ts";

// Coming back from another page everything lies as she left it. Of one project at a time.
let last: { readonly project: string; readonly table: PhotoTable } | null = null;

export const TableContext = createContext<PhotoTable | null>(null);

/** The photos and pieces of the open project that have not been put away. */
export function useOwnTable(): PhotoTable {
  const project = useProject();
  const locale = useLocale();
  const [, preferences] = usePreferences();
  return useMemo(() => {
    if (last?.project !== project.id) {
      const table = new PhotoTable({
        measure: measureBeside,
        correct: correctBeside,
        newId: () => crypto.randomUUID(),
        settings: () => project.state().project.settings,
        addressOf: (picture) => URL.createObjectURL(picture),
        paper: paperFor(preferences.state(), locale),
        bars: () => preferences.state().bars,
        remember: (bars) => preferences.change({ bars }),
      });
      last = { project: project.id, table };
    }
    return last.table;
  }, [project, locale, preferences]);
}

export function useTable(): PhotoTable {
  const table = useContext(TableContext);
  if (table === null) throw new Error("there is no table round it");
  return table;
}

export function useTableState() {
  const table = useTable();
  return useSyncExternalStore(table.subscribe, table.state);
}

export function usePhotoTexts() {
  return useTexts(photoTexts);
}
