import {
  type Dispatch,
  type MouseEvent,
  memo,
  type ReactNode,
  type SetStateAction,
  useDeferredValue,
  useMemo,
  useState,
} from "react";
import { Button, ToggleButton, ToggleButtonGroup } from "react-aria-components";
import type { Lab } from "../../../engine/cloth/index.ts";
import {
  type Drawing,
  drawingInView,
  greyOf,
  mirroredRect,
  type Rect,
  type View,
  views,
} from "../../../engine/drawing/index.ts";
import { drawingTexts, viewTexts } from "../../../words/index.ts";
import { ClothDrawing } from "../../parts/drawing/clothDrawing.tsx";
import { useTexts } from "../../parts/texts.ts";
import { Carried, type Carrying } from "./carried.tsx";
import { Enlarged, enlargedBy, largest } from "./enlarged.tsx";
import styles from "./figure.module.css";
import { StepNumbers, StepsToGo, type ToGo } from "./stepsToGo.tsx";
import { Covering, TopOverBack } from "./topOverBack.tsx";
import chips from "./wishes.module.css";

type MarkProps = {
  readonly pinned?: readonly Rect[];
  readonly framed?: Rect;
  readonly marked?: readonly Rect[];
  readonly newCloth?: Lab;
};

type FigureProps = MarkProps & {
  readonly drawing: Drawing;
  readonly name: string;
  /** Her own cloth, to lie over the colors where she wants to see it. */
  readonly onCloth?: ReactNode;
  /** The picture of the finished top, by its name among those of the project. */
  readonly topPicture?: string | undefined;
  /** A place of the drawing, each way 0 to 1. */
  readonly onTap?: (x: number, y: number) => void;
  /** What is framed may be dragged. */
  readonly carrying?: Carrying;
  /** What the marked cells are. */
  readonly said?: string;
  /** How far she has sewn it; without it nobody can tell. */
  readonly toGo?: ToGo | undefined;
};

/** The large drawing, as she wants to look at it: her own cloth, in colour, in greys, its seams, under the top; whole or enlarged. */
export function Figure({
  drawing,
  name,
  onCloth = null,
  topPicture,
  onTap,
  carrying,
  said,
  toGo,
  ...marks
}: FigureProps) {
  const texts = useTexts(viewTexts);
  const drawn = useTexts(drawingTexts);
  const [wanted, setView] = useState<View>("cloth");
  const [wantedSize, setSize] = useState(1);
  const [hasCutOff, hasCloth, hasToGo] = [drawing.cutOff !== null, onCloth !== null, toGo !== undefined];
  const offered = useMemo(
    () => viewsOf({ cutOff: hasCutOff, cloth: hasCloth, toGo: hasToGo }),
    [hasCutOff, hasCloth, hasToGo],
  );
  const chosen = offered.includes(wanted) ? wanted : "colour";
  // What she pressed is marked at once; the drawing, with all its patches, follows a moment later.
  const view = useDeferredValue(chosen);
  const size = useDeferredValue(wantedSize);
  const shown = useMemo(
    () => drawingInView(drawing, view, (cell) => toGo?.steps[cell] != null),
    [drawing, view, toGo],
  );
  const [covering, setCovering] = useState(0.6);
  const isUnderTop = view === "through-top" && topPicture !== undefined;
  const isToGo = view === "to-go" && toGo !== undefined;
  // The same while nothing in it changes, so that the drawing is not gone through for a press elsewhere.
  const overCloth = useMemo(() => {
    if (view === "cloth") return onCloth;
    if (isToGo) return <StepNumbers drawing={shown} steps={toGo.steps} />;
    return isUnderTop && <TopOverBack drawing={shown} picture={topPicture} covering={covering} />;
  }, [view, onCloth, isToGo, toGo, shown, isUnderTop, topPicture, covering]);
  const { framed } = marks;
  // Under the top left is right.
  const isCarried = carrying !== undefined && framed !== undefined && view !== "through-top";
  const tap = ({ currentTarget, clientX, clientY }: MouseEvent<HTMLDivElement>) => {
    const box = currentTarget.querySelector("svg")?.getBoundingClientRect();
    if (box === undefined) return;
    const x = (clientX - box.left) / box.width;
    onTap?.(view === "through-top" ? 1 - x : x, (clientY - box.top) / box.height);
  };
  return (
    <figure className={styles.figure}>
      <Enlarged size={size} onSize={setSize}>
        {/* biome-ignore lint/a11y: by keyboard the list of pieces does the same */}
        <div className={onTap === undefined ? undefined : styles.tapped} onClick={tap}>
          <ClothDrawing
            drawing={shown}
            name={name}
            ruler={drawn.ruler(drawing.ruler.length)}
            onCloth={overCloth}
            over={isCarried && <Carried framed={framed} size={drawing.size} {...carrying} />}
            {...marksIn(marks, drawing, view)}
          />
        </div>
      </Enlarged>
      <figcaption>
        {texts.viewIs[view]} {isToGo && texts.sewn(toGo.done, toGo.all)}{" "}
        {drawing.cutOff !== null && drawn.cutOff} {said}
      </figcaption>
      {isToGo && <StepsToGo toGo={toGo} />}
      {isUnderTop && <Covering covering={covering} onCovering={setCovering} />}
      {onTap !== undefined && (
        <div className={styles.ways}>
          <Views view={chosen} offered={offered} onView={setView} />
          <Sizes size={wantedSize} onSize={setSize} />
        </div>
      )}
    </figure>
  );
}

type Has = { readonly cutOff: boolean; readonly cloth: boolean; readonly toGo: boolean };

function viewsOf({ cutOff, cloth, toGo }: Has): readonly View[] {
  return views.filter((one) => {
    if (one === "cloth") return cloth;
    if (one === "to-go") return toGo;
    return one !== "through-top" || cutOff;
  });
}

/** What is marked lies where its cells lie in this view, and has their colours. */
function marksIn(marks: MarkProps, { size: { width }, cutOff }: Drawing, view: View): MarkProps {
  const { pinned = [], marked = [], framed, newCloth } = marks;
  if (view === "value" && newCloth !== undefined) return { ...marks, newCloth: greyOf(newCloth) };
  if (view !== "through-top") return marks;
  const top = cutOff === null || newCloth !== undefined ? [] : [cutOff.outline];
  const flip = (rect: Rect) => mirroredRect(rect, width);
  return {
    ...marks,
    pinned: pinned.map(flip),
    marked: [...marked, ...top].map(flip),
    ...(framed === undefined ? {} : { framed: flip(framed) }),
  };
}

type ViewsProps = {
  readonly view: View;
  readonly offered: readonly View[];
  readonly onView: (view: View) => void;
};

// Neither concerns the other, nor does a drawing that is better than the one before.
const Views = memo(function Views({ view, offered, onView }: ViewsProps) {
  const texts = useTexts(viewTexts);
  return (
    <ToggleButtonGroup
      aria-label={texts.view}
      className={`${chips.chips}`}
      selectionMode="single"
      disallowEmptySelection
      selectedKeys={[view]}
      onSelectionChange={(keys) => onView(offered.find((one) => keys.has(one)) ?? view)}
    >
      {offered.map((one) => (
        <ToggleButton key={one} id={one} className={`${chips.chip}`}>
          {texts.views[one]}
        </ToggleButton>
      ))}
    </ToggleButtonGroup>
  );
});

type SizesProps = { readonly size: number; readonly onSize: Dispatch<SetStateAction<number>> };

const Sizes = memo(function Sizes({ size, onSize }: SizesProps) {
  const texts = useTexts(viewTexts);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset is for what is filled in
    <div className={styles.sizes} role="group" aria-label={texts.size}>
      <Button
        className={`button ${styles.size}`}
        aria-label={texts.smaller}
        isDisabled={size === 1}
        onPress={() => onSize((now) => enlargedBy(now, -1))}
      >
        −
      </Button>
      <Button
        className={`button ${styles.size}`}
        aria-label={texts.larger}
        isDisabled={size === largest}
        onPress={() => onSize((now) => enlargedBy(now, 1))}
      >
        +
      </Button>
      {size > 1 && (
        <Button className="button plain" onPress={() => onSize(1)}>
          {texts.whole}
        </Button>
      )}
    </div>
  );
});
