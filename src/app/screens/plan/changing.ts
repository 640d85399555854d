import type { PlanDocument } from "../../../files/index.ts";
import type { Desk, Wish } from "./desk.ts";
import type { Planning } from "./planning.ts";
import type { Cell } from "./stays.ts";
import type { Hand } from "./useHand.ts";

export type Changing = {
  readonly wish: Wish;
  readonly plan: PlanDocument;
  readonly desk: Desk;
  readonly hand: Hand;
};

export type ChangePlanProps = Changing & { readonly planning: Planning & { readonly kind: "ready" } };

export type OfCellProps = ChangePlanProps & { readonly cell: Cell };
