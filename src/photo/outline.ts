import type { Polygon } from "./polygon.ts";

/** A piece as the floor picture shows it, on the floor in inches, clockwise. */
export type Outline = {
  readonly polygon: Polygon;
  /** The share of it that differs from the floor. */
  readonly filled: number;
  /** The share of its hull that is covered: less where it is no convex piece, or several. */
  readonly solid: number;
  /** It was cut from what touches it. */
  readonly split: boolean;
  /** Of how many parts it was put together. */
  readonly parts: number;
  /** It reaches to where the photo or the measured floor ends, or under a card. */
  readonly cutOff: boolean;
};
