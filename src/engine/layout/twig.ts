import type { Face, Stock } from "./stock.ts";

/** The solver's own tree: sizes in steps, immutable, costs added up on the way. `settle` makes the layout of it. */
export type Twig = Leaf | Fork;

type Cell = {
  readonly width: number;
  readonly height: number;
  /** In steps² of plain cloth. */
  readonly cost: number;
  /** Leaves below, itself counted; a unit counts as the cells it is sewn from. */
  readonly leaves: number;
  readonly holes: number;
};

export type Leaf = Cell & {
  readonly kind: "leaf";
  /** null: plain cloth. */
  readonly face: Face | null;
};

export type Fork = Cell & {
  readonly kind: "fork";
  readonly beside: boolean;
  readonly parts: readonly Twig[];
};

export type Sawmill = {
  leaf(face: Face, width: number, height: number): Leaf;
  /** What that leaf would cost. */
  costOf(face: Face, width: number, height: number): number;
  cloth(width: number, height: number): Leaf;
  costOfCloth(width: number, height: number): number;
  hole(width: number, height: number): Leaf;
  /** Joins parts; parts of the same direction are taken in, cloth beside cloth becomes one. */
  join(beside: boolean, parts: readonly Twig[]): Twig;
};

export function twigsFor(stock: Stock): Sawmill {
  const { prices } = stock;
  const inch = stock.stepsPerInch;
  const square = inch * inch;
  const seamCost = prices.seam * square;

  const narrow = (width: number, height: number): number => {
    const thin = Math.min(width, height);
    const long = Math.max(width, height);
    return thin < 2.5 * inch && long > 24 * inch ? (long - 24 * inch) * inch * 0.15 : 0;
  };
  const leaf = (face: Face, width: number, height: number): Leaf => ({
    kind: "leaf",
    face,
    width,
    height,
    cost: costOf(face, width, height),
    leaves: face.lot.unit === null ? 1 : face.lot.cells,
    holes: 0,
  });
  const costOf = (face: Face, width: number, height: number): number =>
    trimCost(face, width, height) + narrow(width, height) + crosscut(face, width, height);
  const trimCost = (face: Face, width: number, height: number): number => {
    const full = face.lot.roll || face.along !== null ? lengthwise(face, width, height) : face.lot.area;
    const lost = full - width * height;
    const end = face.lot.roll ? 0 : (face.lot.area - full) * prices.stripEnd;
    return end + (lost > 0 ? lost * prices.trimArea + prices.trimPiece * square : 0);
  };
  const crosscut = (face: Face, width: number, height: number): number => {
    if (!face.lot.roll) return 0;
    const [along, across] =
      face.along === "width" ? [width / inch, height / inch] : [height / inch, width / inch];
    return (
      (prices.crosscut + across * prices.crosscutInch + Math.max(0, 5 - along) * prices.shortInch) * square
    );
  };
  const costOfCloth = (width: number, height: number): number => {
    const thin = Math.min(width, height) / inch;
    const sliver = thin < 2 ? (2 - thin) * 3 : 0;
    const side = prices.clothSide * Math.sqrt(width * height) * inch;
    return (
      width * height * prices.clothArea + (prices.clothCell + sliver) * square + side + narrow(width, height)
    );
  };
  const cloth = (width: number, height: number): Leaf => {
    const cost = costOfCloth(width, height);
    return { kind: "leaf", face: null, width, height, cost, leaves: 1, holes: 0 };
  };
  const hole = (width: number, height: number): Leaf => ({
    kind: "leaf",
    face: null,
    width,
    height,
    cost: 0,
    leaves: 1,
    holes: 1,
  });
  const join = (beside: boolean, parts: readonly Twig[]): Twig => {
    const flat = flatten(beside, parts, cloth);
    if (flat.length === 1) return flat[0] as Twig;
    return fork(beside, flat, seamCost);
  };
  return { leaf, costOf, cloth, costOfCloth, hole, join };
}

// A strip may be cut to any length, so only what goes off its width is trim.
function lengthwise(face: Face, width: number, height: number): number {
  return face.along === "width" ? width * face.maxHeight : face.maxWidth * height;
}

function flatten(beside: boolean, parts: readonly Twig[], cloth: (w: number, h: number) => Leaf): Twig[] {
  const flat: Twig[] = [];
  let clothAt = -1;
  for (const part of parts) {
    const inner = part.kind === "fork" && part.beside === beside ? part.parts : [part];
    for (const one of inner) {
      if (!isCloth(one)) flat.push(one);
      else if (clothAt < 0) clothAt = flat.push(one) - 1;
      else flat[clothAt] = merged(beside, flat[clothAt] as Twig, one, cloth);
    }
  }
  return flat;
}

function merged(beside: boolean, one: Twig, other: Twig, cloth: (w: number, h: number) => Leaf): Leaf {
  return beside ? cloth(one.width + other.width, one.height) : cloth(one.width, one.height + other.height);
}

function isCloth(twig: Twig): boolean {
  return twig.kind === "leaf" && twig.face === null && twig.holes === 0;
}

function fork(beside: boolean, parts: readonly Twig[], seamCost: number): Fork {
  let along = 0;
  let cost = seamCost * (parts.length - 1);
  let leaves = 0;
  let holes = 0;
  for (const part of parts) {
    along += beside ? part.width : part.height;
    cost += part.cost;
    leaves += part.leaves;
    holes += part.holes;
  }
  const first = parts[0] as Twig;
  const width = beside ? along : first.width;
  const height = beside ? first.height : along;
  return { kind: "fork", beside, parts, width, height, cost, leaves, holes };
}
