import type { Length } from "../length/index.ts";

export const buyUses = ["plain", "binding", "batting", "sleeve", "label"] as const;
export type BuyUse = (typeof buyUses)[number];

/** Cloth to buy: `length` off a bolt that is `width` wide after selvages. */
export type BuyRow = {
  readonly use: BuyUse;
  readonly fabric: string;
  readonly width: Length;
  readonly length: Length;
};
