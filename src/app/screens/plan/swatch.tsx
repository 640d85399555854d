import type { Job } from "../../../engine/cloth/index.ts";
import type { LeafNode } from "../../../engine/layout/index.ts";
import styles from "./changePlan.module.css";

/** A bit of the fabric; nothing where it is of several, or its color is not known. */
export function Swatch({
  fabric,
  job: { fabrics },
}: {
  readonly fabric: string | undefined;
  readonly job: Job;
}) {
  const background = fabrics.find(({ id }) => id === fabric)?.colour;
  if (background === undefined) return null;
  return <span className={`cloth ${styles.swatch}`} style={{ background }} aria-hidden="true" />;
}

/** What is sewn of several has more than one. */
export function fabricOf(node: LeafNode, { pieces }: Job): string | undefined {
  if (node.kind === "cloth") return node.fabric;
  return node.kind === "piece" ? pieces.find(({ id }) => id === node.piece)?.fabric : undefined;
}
