import { inches, type Size } from "../length/index.ts";
import type { ClothNode } from "./types.ts";

const wide = inches(8);

/** What plain cloth of that size is there for. */
export function roleFor({ width, height }: Size): ClothNode["role"] {
  return Math.min(width, height) > wide ? "plain" : "spacer";
}
