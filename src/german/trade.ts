import type { TradeWords } from "../words/index.ts";

export const trade: TradeWords = {
  language: "de",
  colour: "Farbe",
  colours: "Farben",
  centre: "Mitte",
  grey: "Grau",
  neighbours: "Nachbarn",
  towards: "zu",
  batting: "Vlies",
  homeMachine: "Haushaltsmaschine",
  muslin: "Nessel",
  selvage: "Webkante",
  crib: "Babybett",
  soldBy: "m",
  about: "etwa ",
  inch: "Inch",
  squareInch: "in²",
  decimal: ",",
};
