import * as Y from "yjs";

/**
 * Where the parts of a project lie in its document. Each part that two tabs may change by themselves is a value of
 * its own, so that both changes stay.
 */
export type Roots = {
  readonly doc: Y.Doc;
  /** `version` of the schema. Not undone. */
  readonly about: Y.Map<unknown>;
  /** By fact name, as JSON. */
  readonly facts: Y.Map<unknown>;
  /** By id: a map of `line`, `others` and `cells.…`, each as JSON. */
  readonly leftovers: Y.Map<unknown>;
  /** Ids in her order. May name an id twice where two tabs moved the same row: the first counts. */
  readonly order: Y.Array<unknown>;
  /** By id, as JSON. */
  readonly rough: Y.Map<unknown>;
  readonly roughOrder: Y.Array<unknown>;
  /** `keptAt/step`: a tick belongs to the plan it was set in. */
  readonly ticked: Y.Map<unknown>;
};

export function rootsOf(doc: Y.Doc): Roots {
  return {
    doc,
    about: doc.getMap("about"),
    facts: doc.getMap("facts"),
    leftovers: doc.getMap("leftovers"),
    order: doc.getArray("order"),
    rough: doc.getMap("rough"),
    roughOrder: doc.getArray("roughOrder"),
    ticked: doc.getMap("ticked"),
  };
}

/** Ids as they are shown: each once, those that stand in no place last. */
export function idsInOrder(order: Y.Array<unknown>, listed: Y.Map<unknown>): readonly string[] {
  const ids = new Set<string>();
  for (const id of order.toArray()) if (typeof id === "string" && listed.has(id)) ids.add(id);
  const placeless = [...listed.keys()].filter((id) => !ids.has(id)).sort();
  return [...ids, ...placeless];
}

export function tickKey(keptAt: number, step: string): string {
  return `${keptAt}/${step}`;
}

/** A row's parts by name; `null`: what lies there is no row. */
export function partsOf(row: unknown): ReadonlyMap<string, unknown> | null {
  return row instanceof Y.Map ? new Map(row.entries()) : null;
}
