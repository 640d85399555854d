import { useState } from "react";
import { Button } from "react-aria-components";
import type { ProjectSummary } from "../../../store/index.ts";
import { hrefOf, useSaveProject, useStore } from "../../frame/index.ts";
import { ClothDrawing } from "../../parts/drawing/clothDrawing.tsx";
import styles from "./projects.module.css";
import { nextPage, type Picture, tallnessOf } from "./stage.ts";
import { useProjectsTexts } from "./texts.ts";
import { Versions } from "./versions.tsx";

type BackInListProps = {
  readonly project: ProjectSummary;
  /** null: not read yet. */
  readonly picture: Picture | null;
  readonly onRemoved: (project: ProjectSummary) => void;
};

/** One of her backs: its picture, how far it has come, and what can be done with it. */
export function BackInList({ project, picture, onRemoved }: BackInListProps) {
  const texts = useProjectsTexts();
  const [isOpen, setOpen] = useState(false);
  const { id, title, changedAt } = project;
  const drawing = picture?.drawing ?? null;
  const screen = picture === null ? "size" : nextPage(picture.stage);
  return (
    <li className={styles.back}>
      <a className={styles.link} href={hrefOf({ screen, project: id })}>
        <span className={styles.picture} style={{ "--inches": tallnessOf(drawing) }} aria-hidden="true">
          {drawing !== null && picture !== null && (
            <ClothDrawing drawing={drawing} look="small" name={texts.pictureOf(title, picture.stage)} />
          )}
        </span>
        <span className={styles.about}>
          <span className={styles.name}>{title}</span>
          <span>{picture === null ? "" : texts.stage(picture.stage)}</span>
          <span className={styles.quiet}>{texts.changed(changedAt, Date.now())}</span>
        </span>
      </a>
      <Button
        className="button plain"
        aria-label={texts.moreOf(title)}
        aria-expanded={isOpen}
        onPress={() => setOpen(!isOpen)}
      >
        {texts.more}
      </Button>
      {isOpen && <Actions project={project} onRemoved={onRemoved} onDone={() => setOpen(false)} />}
    </li>
  );
}

type ActionsProps = Pick<BackInListProps, "project" | "onRemoved"> & { readonly onDone: () => void };

function Actions({ project, onRemoved, onDone }: ActionsProps) {
  const texts = useProjectsTexts();
  const store = useStore();
  const saveProject = useSaveProject();
  const [isListing, setListing] = useState(false);
  const { id, title } = project;
  const save = async () => {
    const handle = await store.open(id);
    if (handle !== null) saveProject(handle);
    await handle?.close();
    onDone();
  };
  const copy = async () => {
    await store.duplicate(id, texts.copyOf(title));
    onDone();
  };
  const remove = async () => {
    if (await store.remove(id)) onRemoved(project);
  };
  return (
    <div className={styles.actions}>
      <Button className="button" onPress={() => void copy()}>
        {texts.duplicate}
      </Button>
      <Button className="button" onPress={() => void save()}>
        {texts.saveFile}
      </Button>
      <Button className="button" aria-expanded={isListing} onPress={() => setListing(!isListing)}>
        {texts.versions}
      </Button>
      <Button className="button" onPress={() => void remove()}>
        {texts.remove}
      </Button>
      {isListing && <Versions project={id} />}
    </div>
  );
}
