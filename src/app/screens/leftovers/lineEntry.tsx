import {
  type ClipboardEvent,
  type FormEvent,
  memo,
  type ReactNode,
  useEffect,
  useMemo,
  useRef,
  useState,
} from "react";
import { Button, Form } from "react-aria-components";
import { readLine } from "../../../files/index.ts";
import { useProject, useProjectPart } from "../../frame/index.ts";
import { entryOf, knownFabrics } from "./entry.ts";
import { useLeftoversTexts } from "./heapContext.ts";
import styles from "./lineEntry.module.css";
import { LinePreview } from "./linePreview.tsx";
import { withReading } from "./preview.ts";
import { LineField } from "./textField.tsx";

type LineEntryProps = {
  /** Something happened that she should hear of. */
  readonly say: (text: string) => void;
  /** Several lines, or a table, came in at once. */
  readonly onMany: (text: string) => void;
  readonly isEmpty: boolean;
  readonly onTyping: (typing: boolean) => void;
  /** Other ways in, told while nothing is typed. */
  readonly children: ReactNode;
};

/** One leftover a line, drawn while she types. */
export const LineEntry = memo(function LineEntry(props: LineEntryProps) {
  const { say, onMany, isEmpty, onTyping, children } = props;
  const texts = useLeftoversTexts();
  const entry = useEntry(say);
  const field = useRef<HTMLInputElement>(null);
  const isTyping = entry.line !== "";
  useEffect(() => onTyping(isTyping), [onTyping, isTyping]);
  const take = (line: string) => {
    entry.setLine(line);
    field.current?.focus();
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    entry.enter();
    field.current?.focus();
  };
  const paste = (event: ClipboardEvent) => {
    const text = event.clipboardData.getData("text");
    if (!/[\n\r]/.test(text.trim())) return;
    event.preventDefault();
    onMany(text);
  };
  return (
    <section className={styles.entry} aria-label={texts.line}>
      <Form className={`${styles.form}`} onSubmit={submit}>
        <LineField
          label={texts.line}
          onPaste={paste}
          value={entry.line}
          onChange={entry.setLine}
          input={field}
          trouble={entry.trouble}
        />
        <Button type="submit" className={isTyping ? "button next" : "button"}>
          {texts.add}
        </Button>
      </Form>
      {entry.line.trim() === "" ? (
        <Hints isEmpty={isEmpty} onTake={take}>
          {children}
        </Hints>
      ) : (
        <LinePreview
          line={entry.line}
          reading={entry.reading}
          isTold={entry.trouble !== null}
          onMeant={(span, reading) => take(withReading(entry.line, span, reading))}
        />
      )}
    </section>
  );
});

/** What is typed, what it means, and what is wrong with it once she wants it entered. */
function useEntry(say: (text: string) => void) {
  const texts = useLeftoversTexts();
  const handle = useProject();
  const { unit, clothWidth } = useProjectPart(({ settings }) => settings);
  const [line, setText] = useState("");
  const [isAsked, setAsked] = useState(false);
  const reading = useMemo(() => {
    return readLine(line, unit, clothWidth?.value == null ? {} : { clothWidth: clothWidth.value });
  }, [line, unit, clothWidth]);
  const setLine = (text: string) => {
    setText(text);
    setAsked(false);
  };
  const enter = () => {
    if (line.trim() === "") return;
    const entry = entryOf(line, reading, unit, knownFabrics(handle.state().project));
    if (entry === null) return setAsked(true);
    if (entry.kind === "row") handle.addRows([entry.row]);
    else handle.addRough(entry.stock);
    say(
      texts.added(
        reading.rough === null
          ? texts.understood(reading.piece)
          : texts.understoodRough(reading.rough, reading.piece.fabric ?? ""),
      ),
    );
    setLine("");
  };
  const [problem] = reading.problems;
  const trouble = isAsked && problem !== undefined ? texts.lineProblem(problem) : null;
  return { line, setLine, reading, enter, trouble };
}

type HintsProps = {
  readonly isEmpty: boolean;
  readonly onTake: (line: string) => void;
  readonly children: ReactNode;
};

function Hints({ isEmpty, onTake, children }: HintsProps) {
  const texts = useLeftoversTexts();
  return (
    <div className={styles.hints}>
      {isEmpty && <p>{texts.lineHow}</p>}
      {isEmpty && (
        <ul className={styles.examples}>
          {texts.examples.map((example) => (
            <li key={example}>
              <Button className="button plain" onPress={() => onTake(example)}>
                {example}
              </Button>
            </li>
          ))}
        </ul>
      )}
      {children}
    </div>
  );
}
