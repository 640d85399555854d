import {
  type Box,
  boxOf,
  type Drawing,
  type Marks,
  marksOf,
  type Rect,
  type Scale,
  scaleFitting,
} from "../../../engine/drawing/index.ts";

/** How closely a drawing is looked at: a page of its own, a row of several, a picture in a list. */
export const looks = ["large", "medium", "small"] as const;
export type Look = (typeof looks)[number];

/** Pixels of the longer side. Lines keep their width on the screen; how close hatching and stripes lie follows this. */
const longest: Readonly<Record<Look, number>> = { large: 760, medium: 360, small: 180 };

/** A drawing as it is put on the screen, whose size a style sheet decides. */
export type ScreenPage = {
  readonly marks: Marks;
  /** Width ÷ height. */
  readonly ratio: number;
  /** In pixels of the page; null: she gave no top. */
  readonly top: Box | null;
  readonly ruler: RulerOnPage;
};

export type RulerOnPage = {
  /** Of the drawing's width, 0 to 1. */
  readonly share: number;
  /** Where its marks stand, 0 to 1 of its own length; the long ones first, in the middle and last. */
  readonly ticks: readonly { readonly at: number; readonly long: boolean }[];
};

export function pageFor(drawing: Drawing, look: Look): ScreenPage {
  const scale = scaleOnPage(drawing, look);
  const outline = drawing.cutOff?.outline;
  return {
    marks: marksOf(drawing, scale),
    ratio: drawing.size.width / drawing.size.height,
    top: outline === undefined ? null : boxOf(outline, scale),
    ruler: rulerOn(drawing),
  };
}

/** Where a part of the drawing lies on its page. */
export function boxOnPage(rect: Rect, drawing: Drawing, look: Look): Box {
  return boxOf(rect, scaleOnPage(drawing, look));
}

export function scaleOnPage({ size }: Drawing, look: Look): Scale {
  return scaleFitting(size, longest[look]);
}

function rulerOn({ ruler, size }: Drawing): RulerOnPage {
  const count = Math.max(1, Math.round(ruler.length / ruler.every));
  return {
    share: ruler.length / size.width,
    ticks: Array.from({ length: count + 1 }, (_, index) => ({
      at: index / count,
      long: index === 0 || index === count || index * 2 === count,
    })),
  };
}
