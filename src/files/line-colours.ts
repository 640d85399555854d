import { readColour } from "../engine/cloth/index.ts";

/** Cloth has names of colours that CSS lacks; each as a quilter would lay it out. Common practice. German ones too. */
const clothColours: Readonly<Record<string, string>> = {
  apricot: "#e8a877",
  aubergine: "#4b2e3f",
  black: "#1d1d1f",
  blue: "#3f6296",
  blush: "#e6bdb5",
  brick: "#9c4a3a",
  brown: "#6e4a33",
  burgundy: "#6b1f33",
  charcoal: "#3b3f45",
  clay: "#b5694b",
  cream: "#f2e8cf",
  denim: "#41587a",
  ecru: "#e3d8bd",
  emerald: "#1f7a55",
  fig: "#5a4a5f",
  green: "#5b8a4e",
  ink: "#2b3444",
  jade: "#3f8f76",
  lilac: "#b7a0c9",
  linen: "#d9cdb4",
  mint: "#a9d3ba",
  moss: "#6f7d4f",
  mustard: "#c9992f",
  navy: "#26365c",
  oat: "#e6dcc8",
  oatmeal: "#d9cdb8",
  ochre: "#b9832f",
  peach: "#f0b998",
  orange: "#d9803f",
  petrol: "#1f5360",
  plum: "#63375a",
  purple: "#6a4a7f",
  red: "#b5322f",
  rose: "#c9788a",
  rust: "#a5532d",
  sage: "#a9b59a",
  sand: "#d8c5a0",
  slate: "#5b6670",
  stone: "#b5ada0",
  taupe: "#94857a",
  terracotta: "#b5694b",
  turquoise: "#3d9fa0",
  unbleached: "#e9e1d0",
  wine: "#672a3b",
  yellow: "#e5c04b",
  beere: "#7d3450",
  beige: "#e3d8bd",
  blau: "#3f6296",
  braun: "#6e4a33",
  creme: "#f2e8cf",
  dunkelblau: "#26365c",
  dunkelgrau: "#4d5156",
  dunkelgrün: "#2f5138",
  dunkelrot: "#7c2430",
  gelb: "#e5c04b",
  grau: "#8d9094",
  grün: "#5b8a4e",
  hafer: "#e6dcc8",
  hellblau: "#a9c4de",
  hellgrau: "#c8cacc",
  hellgrün: "#b3cf9c",
  lila: "#8a66a3",
  moos: "#6f7d4f",
  natur: "#e9e1d0",
  rosa: "#e7b9c3",
  rot: "#b5322f",
  schwarz: "#1d1d1f",
  senf: "#c9992f",
  silber: "#b9bcc0",
  tinte: "#2b3444",
  türkis: "#3d9fa0",
  weiß: "#ffffff",
  ziegel: "#9c4a3a",
};

// CSS names that say something else of cloth: snow is a print of it, not white.
const notOfCloth = new Set(["snow", "seashell", "transparent", "currentcolor"]);

/**
 * The colour that a fabric's name speaks of, as CSS: `teal dots` is teal, `dark green` darkgreen; null: none. It is
 * a likeness to draw with until she picks one.
 */
export function colourWordIn(name: string): string | null {
  const words = name
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .filter((word) => word !== "");
  for (const [index, word] of words.entries()) {
    const colour = colourOf(`${word}${words[index + 1] ?? ""}`) ?? colourOf(word);
    if (colour !== null) return colour;
  }
  return null;
}

function colourOf(word: string): string | null {
  if (Object.hasOwn(clothColours, word)) return clothColours[word] ?? null;
  // Names alone: three letters that are hexadecimal digits, as in `bad`, are no colour here.
  return /^[a-z]{3,}$/.test(word) && !notOfCloth.has(word) && readColour(word) !== null ? word : null;
}
