import PDFDocument from "pdfkit";

/** What every PDF of ours says of itself. The clock is given, so that the same content is the same file. */
export type DocumentFacts = { readonly title: string; readonly language: string; readonly made: Date };

/**
 * An empty document that viewers print at its own size: the pages carry measures. Coordinates are points of 1/72 in
 * from the upper left corner.
 */
export function newDocument({ title, language, made }: DocumentFacts): PDFKit.PDFDocument {
  const document = new PDFDocument({
    autoFirstPage: false,
    pdfVersion: "1.7",
    tagged: true,
    displayTitle: true,
    lang: language,
    info: { Title: title, Creator: "Verso", CreationDate: made },
  });
  printAtOwnSize(document);
  return document;
}

// pdfkit has no option for it. In its catalogue a plain string is a PDF name: /PrintScaling /None (ISO 32000-1, 12.2).
function printAtOwnSize(document: PDFKit.PDFDocument): void {
  const catalogue: unknown = Reflect.get(document, "_root");
  if (!isReference(catalogue) || !isReference(catalogue.data.ViewerPreferences))
    throw new Error(
      "pdfkit keeps its catalogue elsewhere: the pages would be printed at a size of the printer's",
    );
  catalogue.data.ViewerPreferences.data.PrintScaling = "None";
}

type Reference = { readonly data: Record<string, unknown> };

function isReference(value: unknown): value is Reference {
  return typeof value === "object" && value !== null && "data" in value && typeof value.data === "object";
}

/** Ends the document and gives all of it. */
export async function bytesOf(document: PDFKit.PDFDocument): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  const ended = new Promise<void>((resolve, reject) => {
    document.on("data", (chunk: Uint8Array) => chunks.push(chunk));
    document.on("end", resolve);
    document.on("error", reject);
  });
  document.end();
  await ended;
  return joined(chunks);
}

function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(chunks.reduce((total, chunk) => total + chunk.length, 0));
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}
