import { fileURLToPath } from "node:url";
import { getDocument, type PDFDocumentProxy, type PDFPageProxy } from "pdfjs-dist/legacy/build/pdf.mjs";
import { describe, expect, it } from "vitest";
import { findMarkers, type Pixels } from "../../test/made/vision.ts";
import { type Paper, papers, referencePages } from "../engine/cards/index.ts";
import { toNumber } from "../engine/length/index.ts";
import { cardsWords } from "../words/index.ts";
import { cardsPdf } from "./index.ts";

const made = new Date(Date.UTC(2026, 2, 1));
const pdfOf = (paper: Paper, at = made) => cardsPdf({ paper, words: cardsWords("en-US", "in"), made: at });
const fonts = fileURLToPath(new URL("../../node_modules/pdfjs-dist/standard_fonts/", import.meta.url));

// The reader takes the bytes away with it, so it gets its own.
const opened = (bytes: Uint8Array) =>
  getDocument({ data: bytes.slice(), verbosity: 0, standardFontDataUrl: fonts }).promise;

const dotsPerInch = 60;

/** The page as a printer would put it on paper. */
async function printed(document: PDFDocumentProxy, page: PDFPageProxy): Promise<Pixels> {
  const viewport = page.getViewport({ scale: dotsPerInch / 72 });
  const [width, height] = [Math.round(viewport.width), Math.round(viewport.height)];
  const { canvas, context } = canvasOf(document, width, height);
  await page.render({ canvas, canvasContext: context, viewport }).promise;
  return { width, height, rgba: context.getImageData(0, 0, width, height).data };
}

type Canvas = { readonly canvas: HTMLCanvasElement; readonly context: CanvasRenderingContext2D };

function canvasOf(document: PDFDocumentProxy, width: number, height: number): Canvas {
  const factory = document.canvasFactory as { create(width: number, height: number): Canvas };
  return factory.create(width, height);
}

describe.each(papers)("the reference pages on %s", (paper) => {
  it("print at their own size, and the same again", async () => {
    const bytes = await pdfOf(paper);
    expect(Buffer.from(bytes).toString("latin1")).toContain("/PrintScaling /None");
    expect(await pdfOf(paper)).toEqual(bytes);
    expect(await pdfOf(paper, new Date(Date.UTC(2027, 0, 1)))).not.toEqual(bytes);
  });

  it("show the vision library every marker where it should be, and no other", async () => {
    const document = await opened(await pdfOf(paper));
    const pages = referencePages(paper);
    expect(document.numPages).toBe(pages.length);
    for (const [index, { markers, size }] of pages.entries()) {
      const pixels = await printed(document, await document.getPage(index + 1));
      expect(Math.abs(pixels.width - toNumber(size.width, "in") * dotsPerInch)).toBeLessThan(1);
      const found = findMarkers(pixels);
      expect(found.map(({ id }) => id)).toEqual(markers.map(({ id }) => id));
      for (const [at, { x, y, side }] of markers.entries()) {
        const [left, top, right, bottom] = [x, y, x + side, y + side].map(
          (edge) => (edge / 8128) * dotsPerInch,
        );
        const corners = [left, top, right, top, right, bottom, left, bottom];
        const off = found[at]?.corners.flat().map((value, n) => Math.abs(value - (corners[n] ?? 0)));
        // The library's corners are whole pixels, and its pixels begin at their middles.
        expect(Math.max(...(off ?? [9]))).toBeLessThan(1.6);
      }
    }
  });

  it("say all that is to be said, in their own tongue", async () => {
    const document = await opened(await pdfOf(paper));
    const words = cardsWords("en-US", "in");
    for (const [index, page] of referencePages(paper).entries()) {
      const { items, lang } = await (await document.getPage(index + 1)).getTextContent();
      const text = items.map((item) => ("str" in item ? item.str : "")).join(" ");
      const plain = (words: string) => words.replace(/\s+/g, " ").trim();
      expect(plain(text)).toBe(plain(words.notes(page).join(" ")));
      expect(text).toContain(paper === "a4" ? "must be 150 mm" : "must be 6 in");
      expect(lang).toBe("en-US");
    }
  });

  it("can be read by a voice: a picture with a text, paragraphs, lines passed over", async () => {
    const document = await opened(await pdfOf(paper));
    const tree = JSON.stringify(await (await document.getPage(1)).getStructTree());
    expect(tree.match(/"role":"P"/g)).toHaveLength(4);
    expect(tree).toMatch(/"role":"Figure".*Four black markers/);
  });
});
