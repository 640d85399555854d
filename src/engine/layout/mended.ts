import type { Stock } from "./stock.ts";
import { type Leaf, type Sawmill, type Twig, twigsFor } from "./twig.ts";

/** Two cells off one strip that lie in one line are one cell: nobody cuts a strip to sew it together again. */
export function mended(twig: Twig, stock: Stock): Twig {
  return mend(twig, twigsFor(stock));
}

function mend(twig: Twig, mill: Sawmill): Twig {
  if (twig.kind === "leaf") return twig;
  const parts: Twig[] = [];
  for (const part of twig.parts.map((inner) => mend(inner, mill))) {
    const longer = parts.map((other) => inOneLine(other, part, twig.beside, mill));
    const at = longer.findIndex((leaf) => leaf !== null);
    const leaf = longer[at] ?? null;
    if (leaf === null) parts.push(part);
    else parts[at] = leaf;
  }
  return mill.join(twig.beside, parts);
}

function inOneLine(one: Twig, other: Twig, beside: boolean, mill: Sawmill): Leaf | null {
  if (one.kind !== "leaf" || other.kind !== "leaf") return null;
  const { face } = one;
  if (face === null || face !== other.face || !face.lot.roll) return null;
  if (face.along !== (beside ? "width" : "height")) return null;
  return beside
    ? mill.leaf(face, one.width + other.width, one.height)
    : mill.leaf(face, one.width, one.height + other.height);
}
