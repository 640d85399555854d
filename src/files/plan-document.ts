import type { Style } from "../engine/back/index.ts";
import type { Fabric, Method } from "../engine/cloth/index.ts";
import type { CheckedPiece, LayoutNode } from "../engine/layout/index.ts";
import type { DisplayUnit, Length, Size } from "../engine/length/index.ts";
import type { Figures, Plan } from "../engine/plan/index.ts";
import type { Step } from "../engine/sewing/index.ts";
import type { BuyRow } from "../engine/supplies/index.ts";

export const planFormat = "verso-plan";
export const planVersion = 1;

/**
 * What a plan's file tells: all that its check, its drawing and its sewing need. A `Plan` tells more of each fabric
 * and leftover (Lab colours, grain, washing), which stays in the job.
 */
export type PlanDocument = {
  readonly unit: DisplayUnit;
  readonly step: Length;
  readonly seam: Length;
  readonly plainSeam: Length;
  readonly floor: Length;
  readonly top: DocumentTop | null;
  readonly back: Size;
  readonly style: Style;
  readonly seed: number;
  readonly effort: number;
  readonly byHand?: boolean;
  readonly fabrics: readonly DocumentFabric[];
  readonly pieces: readonly DocumentPiece[];
  readonly layout: LayoutNode;
  readonly unused: readonly { readonly piece: string; readonly count: number }[];
  readonly steps: readonly Step[];
  readonly buy: readonly BuyRow[];
  readonly figures: Figures;
};

export type DocumentTop = Size & { readonly extra: Length; readonly method?: Method };
export type DocumentFabric = Pick<Fabric, "id" | "name" | "colour">;
export type DocumentPiece = CheckedPiece & { readonly name: string };

/** The plan as its file tells it: `readPlan(writePlan(plan))` is this. */
export function documentOf(plan: Plan): PlanDocument {
  return {
    ...plan,
    fabrics: plan.fabrics.map(({ id, name, colour }) => ({ id, name, colour })),
    pieces: plan.pieces.map((piece) => {
      const { id, kind: _, count, fabric, keep, use, direction, name } = piece;
      const facts = { id, count, fabric, keep, use, direction, name };
      return piece.kind === "crumbs"
        ? { ...facts, kind: piece.kind, area: piece.area }
        : { ...facts, kind: piece.kind, width: piece.width, height: piece.height };
    }),
  };
}
