import { Button } from "react-aria-components";
import type { LineProblem, LineReading } from "../../../files/index.ts";
import { useProjectContent } from "../../frame/index.ts";
import { PieceCloth, ScaleRuler } from "./cloth.tsx";
import { shownColour } from "./entry.ts";
import { useLeftoversTexts } from "./heapContext.ts";
import styles from "./lineEntry.module.css";
import { previewOf, readingsIn, takenForGranted } from "./preview.ts";

type LinePreviewProps = {
  readonly line: string;
  readonly reading: LineReading;
  /** Whether what is wrong is said elsewhere already. */
  readonly isTold: boolean;
  readonly onMeant: (span: LineProblem, reading: string) => void;
};

/** What was understood: drawn to scale, and said. */
export function LinePreview({ line, reading, isTold, onMeant }: LinePreviewProps) {
  const texts = useLeftoversTexts();
  const project = useProjectContent();
  const preview = previewOf(reading);
  const [problem] = reading.problems;
  const granted = takenForGranted(reading);
  return (
    <div className={styles.preview}>
      <div className={styles.drawing}>
        {preview !== null && (
          <>
            <PieceCloth
              picture={preview.picture}
              colour={shownColour(reading, project)}
              across={preview.across}
            />
            <ScaleRuler across={preview.across} unit={project.settings.unit} name={texts.ruler} />
          </>
        )}
      </div>
      <div className={styles.said}>
        {problem === undefined ? (
          <p>
            {reading.rough === null
              ? texts.understood(reading.piece)
              : texts.understoodRough(reading.rough, reading.piece.fabric ?? "")}
          </p>
        ) : (
          <p className={styles.echo}>
            <Echo line={line} problem={problem} />
          </p>
        )}
        {problem !== undefined && !isTold && <p>{texts.lineProblem(problem)}</p>}
        {problem !== undefined && (
          <div className={styles.readings}>
            {readingsIn(problem).map((meant) => (
              <Button key={meant} className="button" onPress={() => onMeant(problem, meant)}>
                {texts.meant(meant)}
              </Button>
            ))}
          </div>
        )}
        {granted !== null && <p className={styles.quiet}>{texts.taken(granted)}</p>}
        {problem === undefined && reading.look !== null && <p className={styles.quiet}>{texts.likeness}</p>}
      </div>
    </div>
  );
}

/** The line again, with what can't be read marked. */
function Echo({ line, problem }: { readonly line: string; readonly problem: LineProblem }) {
  const { start, end } = problem;
  return (
    <>
      {line.slice(0, start)}
      <mark className={styles.mark}>{line.slice(start, end)}</mark>
      {line.slice(end)}
    </>
  );
}
