import type { Style } from "../engine/back/index.ts";
import type {
  Amount,
  Contrast,
  Direction,
  Grain,
  Keep,
  Kind,
  Method,
  Time,
  Use,
  WishAsked,
} from "../engine/cloth/index.ts";
import type { Area, DisplayUnit, Length } from "../engine/length/index.ts";
import type { Column } from "./leftovers-columns.ts";

/** What she wrote, kept as it stands, and what was read from it; `null`: nothing could be, or nothing is there. */
export type Written<T> = { readonly text: string; readonly value: T | null };

/**
 * A measure as she wrote it. `unit` is what a bare number took on that day, so that changing the unit on screen
 * neither reads nor rounds anything anew.
 */
export type Measured<T> = Written<T> & { readonly unit: DisplayUnit };

/** One cell of the heap by its column; `weight` is in grams. */
export type Cells = {
  readonly kind: Written<Kind>;
  readonly width: Measured<Length>;
  readonly height: Measured<Length>;
  readonly count: Written<number>;
  readonly fabric: Written<string>;
  readonly colour: Written<string>;
  readonly name: Written<string>;
  readonly keep: Written<Keep>;
  readonly use: Written<Use>;
  readonly direction: Written<Direction>;
  readonly grain: Written<Grain>;
  readonly washed: Written<boolean>;
  readonly cloth: Written<string>;
  readonly area: Measured<Area>;
  readonly weight: Measured<number>;
};

/**
 * One row of the heap. A cell that is not there was left blank; a cell with a text and no value waits to be mended,
 * and so does the whole row until then.
 */
export type Leftover = {
  /** Stays with the row through every edit, move and file. */
  readonly id: string;
  /** The whole line as she typed it; empty where the row came from a table or the grid. */
  readonly line: string;
  readonly cells: { readonly [C in Column]?: Cells[C] };
  /** Columns of her table that are not ours, by heading: kept and otherwise left alone. */
  readonly others: Readonly<Record<string, string>>;
  /** What its cloth looks like: the id of a picture that is kept beside the project (`Pictures`). */
  readonly picture?: string;
};

/** Pictures of a project by their ids, the SHA-256 of their bytes in hexadecimal digits; JPEG or PNG. */
export type Pictures = ReadonlyMap<string, Uint8Array>;

export type NewLeftover = Omit<Leftover, "id">;

/** Stock without a list. Blocks and squares of one size are rows of the heap; these are known only roughly. */
export type RoughStock = {
  readonly id: string;
  readonly fabric: string;
  /** A CSS colour; empty: not said. */
  readonly colour: string;
} & (
  | {
      /** About so much length of strips of one width: 9 yd of 2½ in. */
      readonly kind: "strips";
      readonly width: Measured<Length>;
      readonly total: Measured<Length>;
    }
  | {
      /** A bag of small bits, known by its weight in grams. */
      readonly kind: "bag";
      readonly weight: Measured<number>;
    }
);

/** `null`: the usual one for the unit (`defaultSettings`). */
export type ProjectSettings = {
  readonly unit: DisplayUnit;
  readonly step: Measured<Length> | null;
  readonly seam: Measured<Length> | null;
  readonly plainSeam: Measured<Length> | null;
  readonly floor: Measured<Length> | null;
  readonly clothWidth: Measured<Length> | null;
};

/** Measured at the one edge, through the middle, at the other edge; the largest counts. `null`: not measured. */
export type ThreeMeasures = readonly [
  Measured<Length> | null,
  Measured<Length> | null,
  Measured<Length> | null,
];

export type ProjectSize = {
  /** Whether she gives the top, or the back's own size alone. */
  readonly from: "top" | "back";
  readonly topWidths: ThreeMeasures;
  readonly topHeights: ThreeMeasures;
  readonly method: Method;
  /** On each side; `null`: what the method takes (`extraFor`). */
  readonly extra: Measured<Length> | null;
  /** What her quilter asks for on each side, and at least in all; `null`: nothing of the kind. */
  readonly asksExtra: Measured<Length> | null;
  readonly asksWidth: Measured<Length> | null;
  readonly asksHeight: Measured<Length> | null;
  /** Her own size of the back, instead of the one worked out. */
  readonly backWidth: Measured<Length> | null;
  readonly backHeight: Measured<Length> | null;
};

export type PlainCloth = {
  readonly name: string /** A CSS colour; empty: not said. */;
  readonly colour: string;
};

export type HeapFacts = {
  /** With ruler and cutter, or by scissors and tearing: rough edges are trimmed before anything is sewn. */
  readonly cutting: "clean" | "rough";
  readonly reserveBinding: boolean;
  readonly reserveLabel: boolean;
  /** `keptAt` of the kept plan whose remainders lie on the shelf; `null`: none do. */
  readonly shelved: number | null;
};

/** What she is looking at on the plan page, and what she would like of plans. */
export type Wishes = {
  readonly style: Style | null;
  readonly seed: number;
  readonly amount: Amount;
  readonly asked: readonly WishAsked[];
  /** null: mixed, or strong where she asked for more contrast. */
  readonly contrast: Contrast | null;
  /** Cells of a plan that stay in the next one. */
  readonly stays: StayingCells | null;
  /** The plan as she changed it by hand; null: as it was found. */
  readonly byHand: ChangedPlan | null;
};

/** A `verso-plan` document, and `hashOfJob` of the job it is for: for another one it holds no more. */
export type ChangedPlan = { readonly plan: string; readonly job: string };

/** Cells of a `verso-plan` document: the numbers of the parts that lead to each from its layout, such as "3 0 2". */
export type StayingCells = { readonly plan: string; readonly cells: readonly string[] };

/** The plan she kept. The text is a `verso-plan` document; the rest says what made it. */
export type KeptPlan = {
  readonly text: string;
  /** `hashOfJob` of the job it was made for: another hash today means that her heap or size changed since. */
  readonly job: string;
  readonly style: Style;
  readonly seed: number;
  readonly effort: number;
  /** Milliseconds since 1970, UTC. */
  readonly keptAt: number;
};

/** The finished top as a photo showed it, straightened: its corners are the picture's. */
export type TopPhoto = {
  /** The id of a picture that is kept beside the project (`Pictures`). */
  readonly picture: string;
  /** Its few main colours, `#rrggbb`, most first, each with its share of the top, 0 to 1. */
  readonly colours: readonly { readonly colour: string; readonly share: number }[];
};

/** Everything about one back, as a plain value that never changes. Lists are in her order. */
export type Project = {
  readonly title: string;
  /** Milliseconds since 1970, UTC. */
  readonly createdAt: number;
  readonly sample: boolean;
  readonly settings: ProjectSettings;
  readonly size: ProjectSize;
  /** null: there is no photo of it. */
  readonly topPhoto: TopPhoto | null;
  /** Photos of leftovers that she wants kept: ids of pictures beside the project (`Pictures`), in the order they came. */
  readonly photos: readonly string[];
  readonly time: Time;
  readonly plain: PlainCloth;
  readonly heap: HeapFacts;
  readonly leftovers: readonly Leftover[];
  readonly rough: readonly RoughStock[];
  readonly wishes: Wishes;
  readonly plan: KeptPlan | null;
  /** Ids of the kept plan's steps that are sewn. */
  readonly ticked: ReadonlySet<string>;
};
