import type { ReactNode } from "react";
import styles from "./notice.module.css";

type NoticeProps = {
  readonly title: string;
  readonly text?: string;
  /** What can be done about it. */
  readonly children?: ReactNode;
};

/** What is so, then what to do, in place of a page. */
export function Notice({ title, text, children }: NoticeProps) {
  return (
    <section className={styles.notice}>
      <h1 tabIndex={-1}>{title}</h1>
      {text !== undefined && <p>{text}</p>}
      {children !== undefined && <div className={styles.ways}>{children}</div>}
    </section>
  );
}
