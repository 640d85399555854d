import { type Drawing, hatchPath, rounded, type Scale, type ShownFabric } from "../engine/drawing/index.ts";
import { unitsPerInch } from "../engine/length/index.ts";
import { clothOf } from "./svg-cloth.ts";
import { fillOf, type Theme, type ThemeName, themes } from "./svg-colour.ts";
import { type Attributes, element, escaped, shortened, widthOf, wrapped } from "./svg-text.ts";

/** What a picture says, from the word set in use. What isn't given isn't written. */
export type DrawingWords = {
  readonly title: string;
  /** For who can't see the picture: what is on it. */
  readonly description?: string;
  /** A line or two under the title. */
  readonly caption?: readonly string[];
  /** The drawing's sides, such as "68 in". */
  readonly width?: string;
  readonly height?: string;
  /** The ruler's length, such as "12 in". */
  readonly ruler?: string;
  /** "Seen from behind". */
  readonly seenFrom?: string;
  /** What the hatching means. */
  readonly cutOff?: string;
  /** Fabrics left out of the legend. */
  readonly more?: (count: number) => string;
};

export type SvgOptions = {
  readonly words?: DrawingWords;
  readonly theme?: ThemeName;
  /** Pixels to the inch; the same for all pictures, so that what is as large in life is as large on the page. */
  readonly perInch?: number;
};

/**
 * A drawing as an SVG file: cloth flat in its own colour, seams as a double line, the cut-off edge hatched, a ruler
 * to scale, the fabrics by name. The same drawing and words give the same text.
 */
export function svgOfDrawing(drawing: Drawing, options: SvgOptions = {}): string {
  const page = pageOf(drawing, options);
  const head = headOf(page);
  const cloth = clothPartOf(page, head.end);
  const foot = footOf(page, cloth.end);
  const legend = legendOf(page, foot.end);
  const height = rounded(legend.end + margin);
  const { words, theme } = page;
  const inside = [
    ...(words ? [element("title", {}, escaped(words.title)), ...describe(words)] : []),
    element("rect", { width: page.width, height, fill: theme.ground }),
    ...[head, cloth, foot, legend].flatMap(({ marks }) => marks),
  ];
  const attributes = {
    xmlns: "http://www.w3.org/2000/svg",
    viewBox: `0 0 ${page.width} ${height}`,
    width: page.width,
    height,
    role: "img",
    ...(words ? { "aria-label": words.title } : {}),
    "font-family": fonts,
  };
  return `${element("svg", attributes, `\n${inside.join("\n")}\n`)}\n`;
}

const margin = 48;
const narrowest = 440;
const fonts = "'Source Sans 3', Seravek, 'Noto Sans', 'Segoe UI', Calibri, 'DejaVu Sans', sans-serif";
const textSizes = { title: 22, caption: 14, label: 12 } as const;
const capHeight = 0.72;

type Page = {
  readonly drawing: Drawing;
  readonly words: DrawingWords | undefined;
  readonly theme: Theme;
  readonly scale: Scale;
  /** Of the page. */
  readonly width: number;
  /** Where the drawing begins; text stands flush with it. */
  readonly left: number;
  readonly drawn: { readonly width: number; readonly height: number };
};

/** Marks on the page, and how far down they reach. */
type Band = { readonly marks: readonly string[]; readonly end: number };

function pageOf(drawing: Drawing, { words, theme = "light", perInch = 10 }: SvgOptions): Page {
  const scale: Scale = (units) => (units * perInch) / unitsPerInch;
  const drawn = { width: scale(drawing.size.width), height: scale(drawing.size.height) };
  const left = margin + (words?.height ? 20 : 0);
  const width = rounded(Math.max(narrowest, left + drawn.width + margin));
  return { drawing, words, theme: themes[theme], scale, width, left, drawn };
}

function describe({ description }: DrawingWords): readonly string[] {
  return description ? [element("desc", {}, escaped(description))] : [];
}

function headOf({ words, theme, left, width }: Page): Band {
  if (!words) return { marks: [], end: margin };
  const room = width - left - margin;
  const marks: string[] = [];
  let end = margin;
  for (const line of wrapped(words.title, room, textSizes.title)) {
    end += textSizes.title * capHeight;
    marks.push(text(line, left, end, { ...titleFont, fill: theme.ink }));
    end += 12;
  }
  for (const line of (words.caption ?? []).flatMap((part) => wrapped(part, room, textSizes.caption))) {
    end += textSizes.caption * capHeight;
    marks.push(text(line, left, end, { ...captionFont, fill: theme.quiet }));
    end += 10;
  }
  return { marks, end: end + 16 };
}

function clothPartOf(page: Page, start: number): Band {
  const { drawing, scale, theme, left, drawn, words } = page;
  const top = start + (words?.width ? 20 : 0);
  const cloth = clothOf(drawing, scale, theme).join("\n");
  const placed = element("g", { transform: `translate(${rounded(left)} ${rounded(top)})` }, `\n${cloth}\n`);
  return { marks: [placed, ...sidesOf(page, top)], end: top + drawn.height };
}

/** The drawing's measures, outside it and parallel to its sides. */
function sidesOf({ words, theme, left, drawn }: Page, top: number): readonly string[] {
  const font = { ...labelFont, fill: theme.quiet, "text-anchor": "middle" };
  const middle = top + drawn.height / 2;
  const beside = left - 12;
  const turn = { transform: `rotate(-90 ${rounded(beside)} ${rounded(middle)})` };
  return [
    ...(words?.width ? [text(words.width, left + drawn.width / 2, top - 10, font)] : []),
    ...(words?.height ? [text(words.height, beside, middle, { ...font, ...turn })] : []),
  ];
}

/** The ruler, and from which side the cloth is seen. */
function footOf(page: Page, start: number): Band {
  const { words, theme, left, width, drawn } = page;
  const line = start + 28;
  const right = Math.max(left + drawn.width, width - margin);
  const seen = { ...labelFont, fill: theme.quiet, "text-anchor": "end" };
  const { ruler = "", seenFrom = "" } = words ?? {};
  const ruled = left + rulerLength(page) + 10;
  const fits = ruled + widthOf(ruler, textSizes.label) + 20 + widthOf(seenFrom, textSizes.label) <= right;
  const below = seenFrom === "" || fits ? line : line + 22;
  return {
    marks: [
      rulerOf(page, line),
      ...(ruler === "" ? [] : [text(ruler, ruled, line + 1, labelOf(theme))]),
      ...(seenFrom === "" ? [] : [text(seenFrom, right, below + 1, seen)]),
    ],
    end: below + 6,
  };
}

function rulerOf(page: Page, line: number): string {
  const { drawing, theme, scale, left } = page;
  const count = Math.round(drawing.ruler.length / drawing.ruler.every);
  const ticks = Array.from({ length: count + 1 }, (_, index) => {
    const long = index === 0 || index === count || index * 2 === count;
    const x = rounded(left + scale(drawing.ruler.every) * index);
    return `M${x} ${rounded(line)}v${long ? -8 : -4}`;
  });
  const d = `M${rounded(left)} ${rounded(line)}h${rounded(rulerLength(page))}${ticks.join("")}`;
  return element("path", { d, fill: "none", stroke: theme.quiet });
}

function rulerLength({ drawing, scale }: Page): number {
  return scale(drawing.ruler.length);
}

const columnGap = 24;
const widestName = 240;
const rowHeight = 26;
const swatch = 15;
const mostFabrics = 15;

/** What a mark on the drawing stands for. */
type Entry = { readonly sample: (x: number, y: number) => string; readonly name: string };

function legendOf(page: Page, start: number): Band {
  const entries = entriesOf(page);
  const room = page.width - page.left - margin;
  const widest = Math.max(...entries.map(({ name }) => widthOf(name, textSizes.label)));
  const needed = swatch + 9 + Math.min(widest, widestName) + columnGap;
  const columns = Math.min(4, Math.max(1, Math.floor((room + columnGap) / needed)));
  const column = room / columns;
  const top = start + 26;
  const marks = entries.flatMap(({ sample, name }, index) => {
    const x = page.left + column * (index % columns);
    const y = top + rowHeight * Math.floor(index / columns);
    const label = shortened(name, column - swatch - 9, textSizes.label);
    return [sample(x, y), text(label, x + swatch + 9, y + swatch - 3.5, labelOf(page.theme))];
  });
  const rows = Math.ceil(entries.length / columns);
  return { marks, end: rows === 0 ? start : top + rowHeight * (rows - 1) + swatch };
}

function entriesOf({ drawing, words, theme }: Page): readonly Entry[] {
  if (!words) return [];
  const named = drawing.fabrics.filter(({ fabric }) => fabric.name !== "");
  const shown = named.length > mostFabrics ? named.slice(0, mostFabrics - 1) : named;
  const left = named.length - shown.length;
  const rest = left > 0 && words.more ? [{ sample: () => "", name: words.more(left) }] : [];
  const cut = drawing.cutOff && words.cutOff ? [{ sample: hatchSample(theme), name: words.cutOff }] : [];
  return [
    ...shown.map((fabric) => ({ sample: clothSample(fabric, theme), name: fabric.fabric.name })),
    ...rest,
    ...cut,
  ];
}

function clothSample({ fabric }: ShownFabric, theme: Theme): Entry["sample"] {
  const fill = fillOf(fabric.colours[0]?.lab ?? null, theme);
  return (x, y) => element("rect", { x, y, ...frame(theme), fill });
}

function hatchSample(theme: Theme): Entry["sample"] {
  return (x, y) => {
    const square = { x, y, width: swatch, height: swatch };
    const d = hatchPath(square, { x, y, width: 0, height: 0 });
    const lines = element("path", {
      d,
      fill: "none",
      stroke: theme.ink,
      "stroke-width": 0.6,
      "stroke-opacity": 0.7,
    });
    return element("rect", { x, y, ...frame(theme), fill: "none", "stroke-dasharray": "4 2.5" }) + lines;
  };
}

function frame({ ink }: Theme): Attributes {
  return { width: swatch, height: swatch, stroke: ink, "stroke-width": 0.7, "stroke-opacity": 0.45 };
}

const titleFont = { "font-size": textSizes.title, "font-weight": 600 };
const captionFont = { "font-size": textSizes.caption };
const labelFont = { "font-size": textSizes.label };

function labelOf({ quiet }: Theme): Attributes {
  return { ...labelFont, fill: quiet };
}

function text(content: string, x: number, y: number, attributes: Attributes): string {
  return element("text", { x, y, ...attributes }, escaped(content));
}
