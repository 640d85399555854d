/** A region to be filled with as much as it can hold, nothing trimmed. Every length is a whole number of one unit. */
export type Task = {
  readonly width: number;
  readonly height: number;
  readonly items: readonly Item[];
  /** No cell is narrower than this, of an item or of plain cloth; 1, where it is not said: of any width. */
  readonly smallest?: number;
};

export type Item = {
  readonly width: number;
  readonly height: number;
  readonly copies: number;
  /** What one of it counts: a whole number, such as its area. One that counts nothing is left out. */
  readonly value: number;
  /** It may lie on its side. */
  readonly turns: boolean;
};

/** A slicing tree: parts of a join lie left to right (`beside`) or top to bottom, edge to edge. */
export type Branch = {
  readonly width: number;
  readonly height: number;
} & (
  | { readonly kind: "item"; readonly item: number; readonly turned: boolean }
  | { readonly kind: "plain" }
  | { readonly kind: "join"; readonly beside: boolean; readonly parts: readonly Branch[] }
);

export type Filled = {
  readonly value: number;
  readonly tree: Branch;
  /** Nothing better is possible. */
  readonly proved: boolean;
  /** No arrangement counts more; the value itself where that is proved. */
  readonly bound: number;
  readonly steps: number;
};
