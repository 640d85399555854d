import { drawingTexts, sizeTexts, topPhotoTexts } from "../../../words/index.ts";
import { useProjectContent } from "../../frame/index.ts";
import { ClothDrawing } from "../../parts/drawing/clothDrawing.tsx";
import { usePicture } from "../../parts/pictures.ts";
import { useTexts } from "../../parts/texts.ts";
import styles from "./size.module.css";
import type { SizeFacts } from "./sizeFacts.ts";

/** The back to scale with the top on it, its size in words, and what is odd about it. */
export function TheBack({ facts }: { readonly facts: SizeFacts }) {
  const texts = useTexts(sizeTexts);
  const drawn = useTexts(drawingTexts);
  const topTexts = useTexts(topPhotoTexts);
  const { drawing, back, top, edge } = facts;
  const picture = usePicture(useProjectContent().topPhoto?.picture);
  if (drawing === null || back === null) return <p className={styles.notMeasured}>{texts.notMeasured}</p>;
  return (
    <section aria-label={texts.back}>
      <div className={styles.drawing}>
        <ClothDrawing
          drawing={drawing}
          name={drawn.nameOfBack(back, top)}
          sides={{ width: texts.side(back.width), height: texts.side(back.height) }}
          ruler={drawn.ruler(drawing.ruler.length)}
          topPicture={picture ?? undefined}
          {...(top === null ? {} : { topOn: picture === null ? texts.topOnDrawing(top) : "" })}
        />
      </div>
      {picture !== null && top !== null && <p className={styles.onDrawing}>{topTexts.onDrawing}</p>}
      <p className={styles.backIs} role="status">
        <strong>{texts.back}:</strong> {texts.backIs(back)}
      </p>
      {edge !== null && <p className={styles.quiet}>{texts.cutOffIs(edge)}</p>}
      {facts.backProblems.map((problem) => (
        <p key={`${problem.kind} ${"side" in problem ? problem.side : ""}`} className={styles.note}>
          {texts.jobProblem(problem)}
        </p>
      ))}
    </section>
  );
}
