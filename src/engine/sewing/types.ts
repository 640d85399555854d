import type { JoinDirection, LeftLong } from "../layout/index.ts";
import type { Cut, Finished, Length, Size } from "../length/index.ts";

/** How the seams of a step are pressed. */
export const presses = ["open", "to-one-side", "to-the-plain", "away-from-centre"] as const;
export type Press = (typeof presses)[number];

export const stepKinds = ["join", "unit", "slab"] as const;
export type StepKind = (typeof stepKinds)[number];

/**
 * One thing that is laid into a step, in cut size as laid: a leftover, what an earlier step made, or plain cloth
 * (named by its fabric). `count` stands for equal neighbours, so a row of six squares is one entry.
 */
export type StepPart = Size<Cut> & {
  readonly count: number;
  /** It is laid by so much longer than its size, and trimmed once it is sewn to what it lies beside. */
  readonly leftLong?: LeftLong;
} & (
    | {
        readonly piece: string;
        readonly copy?: number;
        readonly turned?: boolean;
        readonly quarter?: 0 | 1 | 2 | 3;
      }
    | { readonly step: string }
    | {
        readonly cloth: string;
        readonly source: "buy" | { readonly piece: string; readonly copy: number };
        readonly role: "plain" | "spacer" | "coping";
      }
  );

export type Step = {
  readonly id: string;
  readonly kind: StepKind;
  readonly direction: JoinDirection;
  readonly from: readonly StepPart[];
  readonly seam: Length;
  readonly press: Press;
  readonly unfinished: Size<Cut>;
  readonly finished: Size<Finished>;
  /** By how much longer than `unfinished` it comes out: what is trimmed only when it is joined to others. */
  readonly leftLong?: LeftLong;
  /** Trim the sewn unit to this, where pieces of this step share an outer edge: its cut size, and what is left long. */
  readonly squareUp?: Size<Cut>;
  /** A unit's own pattern, for the words. */
  readonly pattern?: string;
};
