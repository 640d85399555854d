import { useEffect, useState } from "react";
import type { ProjectSummary, Store } from "../../../store/index.ts";
import { useStore } from "../../frame/index.ts";
import { type Picture, pictureOf } from "./stage.ts";

const known = new Map<string, Picture>();

function keyOf({ id, changedAt }: ProjectSummary): string {
  return `${id} ${changedAt}`;
}

/** Pictures of the projects in the list, one after the other, as each is read. */
export function usePictures(
  projects: readonly ProjectSummary[],
): (project: ProjectSummary) => Picture | null {
  const store = useStore();
  const [, setCount] = useState(0);
  useEffect(() => {
    let here = true;
    const take = async () => {
      for (const project of projects) {
        if (!here) return;
        if (known.has(keyOf(project))) continue;
        await takePicture(store, project);
        setCount(known.size);
      }
    };
    void take();
    return () => {
      here = false;
    };
  }, [store, projects]);
  return (project) => known.get(keyOf(project)) ?? null;
}

async function takePicture(store: Store, project: ProjectSummary): Promise<void> {
  const handle = await store.open(project.id);
  if (handle === null) return;
  known.set(keyOf(project), pictureOf(handle.state().project));
  await handle.close();
}
