import type { Advice } from "../engine/advice/index.ts";
import type { Style } from "../engine/back/index.ts";
import type { ChoiceNote, Reason } from "../engine/choice/index.ts";
import type {
  Direction,
  DraftProblem,
  Fabric,
  Grain,
  Keep,
  Kind,
  Method,
  Piece,
  Time,
  Use,
} from "../engine/cloth/index.ts";
import type { ClothRole, LayoutNode, LayoutProblem } from "../engine/layout/index.ts";
import type { Area, Length, LengthProblem, Size, SizeProblem } from "../engine/length/index.ts";
import type { Figures, Usable } from "../engine/plan/index.ts";
import type { Press, Step } from "../engine/sewing/index.ts";
import type { BuyRow } from "../engine/supplies/index.ts";
import type { PlanProblem, TableProblem } from "../files/index.ts";
import type { CliLocale } from "./locales.ts";

/** Where the fabrics and leftovers that a step names are looked up; a plan is one. */
export type Names = {
  readonly fabrics: readonly Pick<Fabric, "id" | "name">[];
  readonly pieces: readonly Pick<Piece, "id" | "kind" | "count" | "fabric" | "name">[];
  /** All of them, in order: the last one makes the back. */
  readonly steps?: readonly Step[];
};

/** What was being written when a measure could not be read. */
export type Measured = "size" | "area" | "weight";

/** The things that one takes care with; each is said once, where the tool is picked up. */
export const cautions = ["cutter", "pins", "machine", "iron", "infants"] as const;
export type Caution = (typeof cautions)[number];

/**
 * Every text that Verso shows, in one word set and one unit. All functions give whole sentences, save the names in
 * the first two groups and the measures, which are parts of one.
 */
export type Words = {
  readonly locale: CliLocale;

  // Measures, as a person writes them: 12½ × 20⅛ in, 31.8 cm.
  readonly length: (length: Length) => string;
  readonly size: (size: Size) => string;
  readonly area: (area: Area) => string;
  readonly number: (count: number) => string;
  /** A share, 0 to 1. */
  readonly percent: (share: number) => string;
  /** Cloth as it is sold, rounded up: "2⅞ yd", "2.7 m". */
  readonly bolt: (length: Length) => string;
  /** "between 2 and 3½ hours". */
  readonly time: (minutes: readonly [number, number]) => string;

  // Names.
  readonly kind: (kind: Kind, count: number) => string;
  readonly style: (style: Style) => string;
  readonly use: (use: Use) => string;
  readonly keep: (keep: Keep) => string;
  readonly direction: (direction: Direction) => string;
  readonly grain: (grain: Grain) => string;
  readonly method: (method: Method) => string;
  readonly timeGiven: (time: Time) => string;
  readonly role: (role: ClothRole) => string;
  readonly pattern: (pattern: string) => string;
  /** The layer between top and back. */
  readonly batting: () => string;
  /** Plain unbleached cotton. */
  readonly muslin: () => string;
  readonly selvage: () => string;
  /** A leftover by its pile and number: "strip 4". */
  readonly piece: (id: string) => string;
  /** A sewn unit by the step that makes it: "unit 23". */
  readonly unit: (stepId: string) => string;
  /** A place in the layout: "row 3, place 5". Without the layout only the numbers of the parts are known. */
  readonly place: (path: readonly number[], layout?: LayoutNode) => string;

  // Sentences.
  readonly styleIs: (style: Style) => string;
  readonly press: (press: Press) => string;
  /** One step of the sewing, complete: what is joined, in which order, seam, pressing, what comes out. */
  readonly step: (step: Step, names: Names) => string;
  readonly stepPart: (part: Step["from"][number], names: Names) => string;
  readonly buy: (row: BuyRow, names: Pick<Names, "fabrics">) => string;
  readonly figures: (figures: Figures) => readonly string[];
  /** How near a plan comes to what no plan can be above. */
  readonly usable: (usable: Usable) => string;
  readonly unused: (unused: readonly { readonly piece: string; readonly count: number }[]) => string;
  /** What speaks for a plan among others, in one line. */
  readonly reasons: (reasons: readonly Reason[]) => string;
  readonly choiceNote: (note: ChoiceNote) => string;
  /** What is worth knowing before one sews, and where. */
  readonly advice: (advice: Advice, names: Names) => string;
  readonly caution: (caution: Caution) => string;

  // Problems: what is so, then what to do.
  readonly tableProblem: (problem: TableProblem) => string;
  readonly draftProblem: (problem: DraftProblem) => string;
  readonly lengthProblem: (problem: LengthProblem, measured?: Measured) => string;
  readonly sizeProblem: (problem: SizeProblem) => string;
  readonly layoutProblem: (problem: LayoutProblem, layout?: LayoutNode) => string;
  readonly planProblem: (problem: PlanProblem) => string;
};
