/** The trade's words where they differ from country to country. */
export type TradeWords = {
  /** For numbers and plurals. */
  readonly language: string;
  readonly colour: string;
  readonly colours: string;
  readonly centre: string;
  readonly grey: string;
  readonly neighbours: string;
  readonly towards: string;
  /** The layer between top and back. */
  readonly batting: string;
  /** A sewing machine at home. */
  readonly homeMachine: string;
  /** Plain unbleached cotton. */
  readonly muslin: string;
  readonly selvage: string;
  /** Where a baby sleeps. */
  readonly crib: string;
  /** What cloth is sold by. */
  readonly soldBy: "yd" | "m";
  /** Before a number that the ruler can't show exactly. */
  readonly about: string;
  /** Behind a size in inches, and behind an area. */
  readonly inch: string;
  readonly squareInch: string;
  readonly decimal: "." | ",";
};

export const american: TradeWords = {
  language: "en-US",
  colour: "color",
  colours: "colors",
  centre: "center",
  grey: "gray",
  neighbours: "neighbors",
  towards: "toward",
  batting: "batting",
  homeMachine: "home machine",
  muslin: "muslin",
  selvage: "selvage",
  crib: "crib",
  soldBy: "yd",
  about: "about ",
  inch: "in",
  squareInch: "sq in",
  decimal: ".",
};

export const british: TradeWords = {
  language: "en-GB",
  colour: "colour",
  colours: "colours",
  centre: "centre",
  grey: "grey",
  neighbours: "neighbours",
  towards: "towards",
  batting: "wadding",
  homeMachine: "domestic machine",
  muslin: "calico",
  selvage: "selvedge",
  crib: "cot",
  soldBy: "m",
  about: "about ",
  inch: "in",
  squareInch: "sq in",
  decimal: ".",
};

export const australian: TradeWords = { ...british, language: "en-AU" };
