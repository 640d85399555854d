import { inkOf, type Line, type Paper, type ReferencePage, referencePages } from "../engine/cards/index.ts";
import { type Length, toNumber } from "../engine/length/index.ts";
import type { CardsWords } from "../words/index.ts";
import { bytesOf, newDocument } from "./document.ts";

const hairline = 0.5;
const barWidth = 0.75;
const endMark = 6;
const textSize = 8.5;

export type CardsRequest = {
  readonly paper: Paper;
  readonly words: CardsWords;
  /** When it is made, for the file's own facts. */
  readonly made: Date;
};

/** The reference pages for a paper as a PDF, to be printed at their own size. */
export function cardsPdf({ paper, words, made }: CardsRequest): Promise<Uint8Array> {
  const document = newDocument({ title: words.title, language: words.language, made });
  for (const page of referencePages(paper)) drawPage(document, page, words);
  return bytesOf(document);
}

function drawPage(document: PDFKit.PDFDocument, page: ReferencePage, words: CardsWords): void {
  document.addPage({ size: [points(page.size.width), points(page.size.height)], margin: 0 });
  const markers = () => drawMarkers(document, page);
  document.addStructure(document.struct("Figure", { alt: words.markers(page) }, markers));
  const lines = document.markContent("Artifact", { type: "Layout" });
  drawLines(lines, page);
  lines.endMarkedContent();
  drawNotes(document, page, words.notes(page));
}

function drawMarkers(document: PDFKit.PDFDocument, { markers }: ReferencePage): void {
  for (const { x, y, width, height } of markers.flatMap(inkOf))
    document.rect(points(x), points(y), points(width), points(height));
  document.fill("black");
}

function drawLines(document: PDFKit.PDFDocument, { cuts, bars }: ReferencePage): void {
  document.lineWidth(hairline).dash(3, { space: 3 });
  for (const cut of cuts) draw(document, cut);
  document.stroke("#777777").undash().lineWidth(barWidth);
  for (const bar of bars) drawBar(document, bar);
  document.stroke("black");
}

/** With a mark across each end, whose middle is where the ruler is laid on. */
function drawBar(document: PDFKit.PDFDocument, bar: Line): void {
  const [across, down] = bar.from.y === bar.to.y ? [0, endMark] : [endMark, 0];
  draw(document, bar);
  for (const { x, y } of [bar.from, bar.to])
    document.moveTo(points(x) - across, points(y) - down).lineTo(points(x) + across, points(y) + down);
}

function draw(document: PDFKit.PDFDocument, { from, to }: Line): void {
  document.moveTo(points(from.x), points(from.y)).lineTo(points(to.x), points(to.y));
}

function drawNotes(document: PDFKit.PDFDocument, { notes }: ReferencePage, texts: readonly string[]): void {
  document.font("Helvetica").fontSize(textSize).fillColor("black");
  notes.forEach(({ x, y, width, height }, index) => {
    const text = written(texts[index] ?? "");
    const write = () =>
      document.text(text, points(x), points(y), { width: points(width), height: points(height) });
    document.addStructure(document.struct("P", {}, write));
  });
}

// The paper's own font has no narrow space.
function written(text: string): string {
  return text.replace(/[\u202f\u2009]/g, "\u00a0");
}

/** In points of 1/72 in. */
function points(size: Length): number {
  return toNumber(size, "in") * 72;
}
