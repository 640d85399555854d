import { useRef } from "react";
import { sizeTexts } from "../../../words/index.ts";
import { hrefOf, useProject, useProjectContent } from "../../frame/index.ts";
import { useTexts } from "../../parts/texts.ts";
import { AllOfOneCloth, PlainClothFields } from "./cloth.tsx";
import { Asked, Extra, From, Measures, Method, NameOfBack, TimeGiven, Unit } from "./fields.tsx";
import { PhotoOfTop } from "./photoOfTop.tsx";
import styles from "./size.module.css";
import { type SizeFacts, sizeFacts } from "./sizeFacts.ts";
import { TheBack } from "./theBack.tsx";

/** How large the back must be: the top, how it is quilted, what is asked for; drawn to scale as she types. */
export default function Size() {
  const texts = useTexts(sizeTexts);
  const { id } = useProject();
  const project = useProjectContent();
  const facts = sizeFacts(project);
  return (
    <div className={styles.page}>
      <h1>{texts.title}</h1>
      <div className={styles.result}>
        <TheBack facts={useLastDrawn(facts)} />
      </div>
      <div className={styles.fields}>
        <NameOfBack />
        <Unit />
        <From />
        {project.size.from === "top" && <Measures facts={facts} />}
        {project.size.from === "top" && <Method facts={facts} />}
        {project.size.from === "top" && <Extra facts={facts} />}
        <Asked facts={facts} />
        {facts.top !== null && <PhotoOfTop top={facts.top} />}
        <TimeGiven />
        <PlainClothFields facts={facts} />
        <AllOfOneCloth facts={facts} />
        <div className={styles.goOn}>
          <a
            className={facts.back === null ? "button" : "button next"}
            href={hrefOf({ screen: "leftovers", project: id })}
          >
            {texts.goOn}
          </a>
        </div>
      </div>
    </div>
  );
}

/** Half a number, such as 60 1/, is no reason to take the drawing away: until it can be read the last one stays. */
function useLastDrawn(facts: SizeFacts): SizeFacts {
  const project = useProjectContent();
  const last = useRef(facts);
  const measures = [
    ...project.size.topWidths,
    ...project.size.topHeights,
    project.size.backWidth,
    project.size.backHeight,
  ];
  const isHalfWritten = measures.some((measure) => measure !== null && measure.value === null);
  if (facts.drawing !== null || !isHalfWritten) last.current = facts;
  return last.current;
}
