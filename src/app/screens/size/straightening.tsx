import { type MouseEvent, useEffect, useRef, useState } from "react";
import { Button } from "react-aria-components";
import { hexOf } from "../../../engine/cloth/index.ts";
import type { Size } from "../../../engine/length/index.ts";
import type { TopPhoto } from "../../../files/index.ts";
import type { Corners as FourCorners, PhotoRefusal, Place } from "../../../photo/index.ts";
import type { ProjectHandle } from "../../../store/index.ts";
import { topPhotoTexts } from "../../../words/index.ts";
import { useProject } from "../../frame/index.ts";
import { Corners, Outline } from "../../parts/corners/corners.tsx";
import { type PhotoSize, placeAt } from "../../parts/corners/places.ts";
import { useTexts } from "../../parts/texts.ts";
import type { StraightTop } from "../../worker/photo/messages.ts";
import { type OpenTop, openTop } from "../../worker/photo/topPhoto.ts";
import styles from "./photoOfTop.module.css";

type StraighteningProps = {
  readonly file: File;
  /** The top as she measured it: the photo is brought to its shape. */
  readonly top: Size;
  /** null: she left it. */
  readonly onDone: (what: "added" | "failed" | PhotoRefusal | null) => void;
};

/** The photo as it was taken, until its four corners are marked. */
export default function Straightening({ file, top, onDone }: StraighteningProps) {
  const texts = useTexts(topPhotoTexts);
  const photo = useOpenTop(file, onDone);
  return photo === null ? (
    <p role="status">{texts.opening}</p>
  ) : (
    <Marking photo={photo} top={top} onDone={onDone} />
  );
}

type Shown = OpenTop & { readonly address: string };

function useOpenTop(file: File, onDone: StraighteningProps["onDone"]): Shown | null {
  const [photo, setPhoto] = useState<Shown | null>(null);
  const done = useRef(onDone);
  useEffect(() => {
    done.current = onDone;
  }, [onDone]);
  useEffect(() => {
    let close: (() => void) | null = null;
    let here = true;
    const open = async () => {
      const answer = await openTop(file);
      if (answer.kind === "refused") return here && done.current(answer.why);
      const { top } = answer;
      const address = URL.createObjectURL(top.picture);
      close = () => {
        top.close();
        URL.revokeObjectURL(address);
      };
      if (here) setPhoto({ ...top, address });
      else close();
    };
    open().catch(() => here && done.current("failed"));
    return () => {
      here = false;
      close?.();
    };
  }, [file]);
  return photo;
}

type MarkingProps = Omit<StraighteningProps, "file"> & { readonly photo: Shown };

function Marking({ photo, top, onDone }: MarkingProps) {
  const texts = useTexts(topPhotoTexts);
  const project = useProject();
  const [corners, setCorners] = useState<readonly Place[]>(() => cornersOfMost(photo));
  const latest = useRef(corners);
  const [state, setState] = useState<"marking" | "working" | "not-corners">("marking");
  // What was said of the corners holds until one of them moves; that a move has settled comes a moment later.
  const move = (next: readonly Place[]) => {
    latest.current = next;
    setState("marking");
  };
  const tap = (event: MouseEvent<HTMLImageElement>) => {
    move(withNearest(latest.current, placeAt(event, event.currentTarget, photo)));
    setCorners(latest.current);
  };
  const straighten = async () => {
    const four = fourOf(latest.current);
    if (four === null) return;
    setState("working");
    const straight = await photo.straighten(four, top.width / top.height);
    if (straight === null) return setState("not-corners");
    const kept = await keep(project, straight);
    if (kept !== null) project.setTopPhoto(kept);
    onDone(kept === null ? "failed" : "added");
  };
  const shown = { picture: photo.address, width: photo.width, height: photo.height };
  return (
    <fieldset className={styles.marking} aria-label={texts.marking}>
      <p ref={(how) => how?.focus()} tabIndex={-1}>
        {texts.how}
      </p>
      <div className={`cloth ${styles.photo}`} style={{ aspectRatio: `${photo.width} / ${photo.height}` }}>
        {/* biome-ignore lint/a11y: each mark is a button that the arrow keys move */}
        <img src={photo.address} alt="" className={styles.picture} onClick={tap} />
        <Outline photo={shown} pixels={corners} />
        <Corners
          photo={shown}
          pixels={corners}
          nameOf={(corner) => texts.corners[corner] ?? ""}
          onMoving={move}
          onMoved={setCorners}
        />
      </div>
      <p role="status" className={styles.said}>
        {state === "working" ? texts.straightening : state === "not-corners" ? texts.notCorners : ""}
      </p>
      <div className={styles.ways}>
        <Button
          className="button"
          isDisabled={state === "working"}
          onPress={() => void straighten().catch(() => onDone("failed"))}
        >
          {texts.straighten}
        </Button>
        <Button className="button plain" onPress={() => onDone(null)}>
          {texts.leaveIt}
        </Button>
      </div>
    </fieldset>
  );
}

// Of each side of the photo: most tops are taken with a little of the floor round them.
const margin = 0.1;

function cornersOfMost({ width, height }: PhotoSize): readonly Place[] {
  const [left, top, right, bottom] = [
    width * margin,
    height * margin,
    width * (1 - margin),
    height * (1 - margin),
  ];
  return [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
}

/** The mark that is nearest to a place goes there. */
function withNearest(corners: readonly Place[], to: Place): readonly Place[] {
  const far = corners.map(([x, y]) => Math.hypot(x - to[0], y - to[1]));
  const nearest = far.indexOf(Math.min(...far));
  return corners.map((corner, at) => (at === nearest ? to : corner));
}

function fourOf([one, two, three, four]: readonly Place[]): FourCorners | null {
  return one && two && three && four ? [one, two, three, four] : null;
}

/** Kept beside the project; null where it can't be. */
async function keep(project: ProjectHandle, { picture, palette }: StraightTop): Promise<TopPhoto | null> {
  const [id] = await project.addPictures([new Uint8Array(await picture.arrayBuffer())]);
  if (id === undefined || id === null) return null;
  return { picture: id, colours: palette.map(({ lab, share }) => ({ colour: hexOf(lab), share })) };
}
