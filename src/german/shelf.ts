import { type HeapRemark, type ShelfTexts, sentence, type Voice } from "../words/index.ts";
import { pieceText } from "./lines.ts";
import { quoted } from "./measures.ts";

export function shelf(voice: Voice): ShelfTexts {
  const rowsText = (rows: number) => voice.count(rows, "Zeile", "Zeilen");
  return {
    shelf: (rows) => `Aus dem Regal, ${rowsText(rows)}`,
    shelfWhat:
      "Übrig von früheren Quilts. Hak an, was zu diesem Haufen kommt: Es verlässt das Regal, und Rückgängig legt es zurück.",
    row: (piece) => sentence(pieceText(piece, voice)),
    join: (rows) =>
      rows === 0 ? "Hak an, was zu diesem Haufen kommt" : `${rowsText(rows)} zu diesem Haufen legen`,
    joined: (rows) =>
      `${voice.count(rows, "Zeile ist", "Zeilen sind")} zu diesem Haufen gekommen. Rückgängig legt sie zurück ins Regal.`,
    takeOff: "Endgültig aus dem Regal nehmen",
    takenOff: (rows) => `${rowsText(rows)} aus dem Regal genommen.`,
    layBack: "Zurücklegen",
    toShelf: "Ins Regal",
    movedToShelf: (rows) => `${rowsText(rows)} ins Regal gelegt. Rückgängig holt sie zurück.`,

    staysOver: "Was übrig bleibt",
    staysOverWhat:
      "Stücke, die dieser Plan nicht braucht. Verschnitt und angeschnittene Bahnen sind nicht dabei: Miss sie, und trag sie beim nächsten Quilt ein.",
    putOnShelf: "Alles ins Regal legen",
    liesOnShelf: "Es liegt im Regal, bereit für einen anderen Haufen.",

    remark: (remark) => remarkText(remark, voice),
    blackAndWhite: "Schwarzweiß",
  };
}

function remarkText(remark: HeapRemark, voice: Voice): string {
  switch (remark.kind) {
    case "much-of-one": {
      const name = remark.fabric.name === "" ? "ein einziger Stoff" : quoted(remark.fabric.name);
      return `${voice.percent(remark.share)} dieses Haufens ist ${name}, und von jedem anderen ist wenig da. Verstreut wirken die anderen verloren: Halte sie in einer Reihe oder einer Mitte zusammen.`;
    }
    case "one-value":
      return `Fast alles ist ${valueNames[remark.value]}, darum heben sich die Stücke kaum voneinander ab. ${cure[remark.value]}`;
  }
}

const valueNames = { light: "hell", medium: "mittelhell", dark: "dunkel" };
const cure = {
  light: "Ein dunkler Stoff dazwischen oder ein dunkler Grundstoff bringt sie zur Geltung.",
  medium: "Ein heller oder ein dunkler Stoff dazwischen bringt sie zur Geltung.",
  dark: "Ein heller Stoff dazwischen oder ein heller Grundstoff bringt sie zur Geltung.",
};
