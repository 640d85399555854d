import { useState } from "react";
import type { LayoutNode } from "../../../engine/layout/index.ts";
import type { DrawingTexts, Names, PartPlace } from "../../../words/index.ts";
import styles from "./drawing.module.css";

type LayoutListProps = {
  readonly layout: LayoutNode;
  readonly names: Names;
  readonly texts: DrawingTexts;
};

/** The drawing's full equal in words: rows, places, units and pieces, each inside the one it is part of. */
export function LayoutList({ layout, names, texts }: LayoutListProps) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details className={styles.asList} onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>{texts.asList}</summary>
      {isOpen && (
        <>
          <p className="small">{texts.asListWhat}</p>
          <ul>
            <Part node={layout} place={{ within: "back", index: 0 }} names={names} texts={texts} />
          </ul>
        </>
      )}
    </details>
  );
}

type PartProps = Omit<LayoutListProps, "layout"> & { readonly node: LayoutNode; readonly place: PartPlace };

function Part({ node, place, names, texts }: PartProps) {
  return (
    <li>
      {texts.part(node, place, names)}
      {node.kind === "join" && (
        <ul>
          {node.parts.map((part, index) => (
            <Part
              // biome-ignore lint/suspicious/noArrayIndexKey: a part is known by its place alone
              key={index}
              node={part}
              place={{ within: node.direction, index }}
              names={names}
              texts={texts}
            />
          ))}
        </ul>
      )}
    </li>
  );
}
