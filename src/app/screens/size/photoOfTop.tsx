import { lazy, Suspense, useRef, useState } from "react";
import { Button, FileTrigger } from "react-aria-components";
import type { Size } from "../../../engine/length/index.ts";
import type { PhotoRefusal } from "../../../photo/index.ts";
import { topPhotoTexts } from "../../../words/index.ts";
import { useProject, useProjectContent } from "../../frame/index.ts";
import { photoTypes } from "../../parts/photoTypes.ts";
import { useTexts } from "../../parts/texts.ts";
import { PaletteOfTop } from "./paletteOfTop.tsx";
import styles from "./photoOfTop.module.css";
import sizeStyles from "./size.module.css";

const Straightening = lazy(() => import("./straightening.tsx"));

/** What is said after the last thing she did. */
type Said = "added" | "removed" | "failed" | PhotoRefusal | null;

/** A photo of the finished top, straightened, and its main colours. */
export function PhotoOfTop({ top }: { readonly top: Size }) {
  const texts = useTexts(topPhotoTexts);
  const { topPhoto } = useProjectContent();
  const [file, setFile] = useState<File | null>(null);
  const [said, say] = useState<Said>(null);
  const section = useRef<HTMLElement>(null);
  const done = (what: Said) => {
    setFile(null);
    say(what);
    // The button she pressed is gone: the reading goes on here.
    section.current?.focus({ preventScroll: what === "added" });
  };
  const chosen = (files: FileList | null) => {
    const first = files?.[0];
    if (first === undefined) return;
    say(null);
    setFile(first);
  };
  return (
    <section ref={section} className={sizeStyles.group} aria-labelledby="photo-of-top" tabIndex={-1}>
      <h2 id="photo-of-top">{texts.title}</h2>
      {file === null && topPhoto === null && <p className={sizeStyles.quiet}>{texts.what}</p>}
      <p role="status" className={styles.said}>
        {sayingOf(said, texts)}
      </p>
      {file === null ? (
        <>
          {topPhoto !== null && <PaletteOfTop colours={topPhoto.colours} />}
          <Ways hasPhoto={topPhoto !== null} onChosen={chosen} onRemoved={() => done("removed")} />
        </>
      ) : (
        <Suspense fallback={<p>{texts.opening}</p>}>
          <Straightening file={file} top={top} onDone={done} />
        </Suspense>
      )}
    </section>
  );
}

function sayingOf(said: Said, texts: ReturnType<typeof topPhotoTexts>): string {
  if (said === null) return "";
  return typeof said === "string" ? texts[said] : texts.refused(said);
}

type WaysProps = {
  readonly hasPhoto: boolean;
  readonly onChosen: (files: FileList | null) => void;
  readonly onRemoved: () => void;
};

function Ways({ hasPhoto, onChosen, onRemoved }: WaysProps) {
  const texts = useTexts(topPhotoTexts);
  const project = useProject();
  const remove = () => {
    project.setTopPhoto(null);
    onRemoved();
  };
  return (
    <div className={styles.ways}>
      <span className={styles.camera}>
        <FileTrigger acceptedFileTypes={photoTypes} defaultCamera="environment" onSelect={onChosen}>
          <Button className="button">{texts.take}</Button>
        </FileTrigger>
      </span>
      <FileTrigger acceptedFileTypes={photoTypes} onSelect={onChosen}>
        <Button className="button">{hasPhoto ? texts.another : texts.choose}</Button>
      </FileTrigger>
      {hasPhoto && (
        <Button className="button plain" onPress={remove}>
          {texts.remove}
        </Button>
      )}
    </div>
  );
}
