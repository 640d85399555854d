import { rounded } from "../engine/drawing/index.ts";

/** The few things an SVG file is written with. */
export type Attributes = Readonly<Record<string, string | number>>;

/** An element; `inside` is markup already, so text in it has been through `escaped`. */
export function element(name: string, attributes: Attributes, inside = ""): string {
  const pairs = Object.entries(attributes).map(([key, value]) => ` ${key}="${escaped(written(value))}"`);
  return `<${name}${pairs.join("")}${inside === "" ? "/>" : `>${inside}</${name}>`}`;
}

/** Text as XML takes it. Names are hers and may hold anything; characters that XML has no place for are left out. */
export function escaped(text: string): string {
  return [...text]
    .filter(isXml)
    .join("")
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
}

/** Lines no longer than `width`, broken between words. Fonts differ, so this is an estimate on the wide side. */
export function wrapped(text: string, width: number, fontSize: number): readonly string[] {
  const most = lettersIn(width, fontSize);
  const lines: string[] = [];
  for (const word of text.split(" ")) {
    const line = lines.at(-1);
    if (line !== undefined && line.length + 1 + word.length <= most)
      lines[lines.length - 1] = `${line} ${word}`;
    else lines.push(word);
  }
  return lines.map((line) => shortened(line, width, fontSize));
}

/** The beginning of `text`, with an ellipsis where it is too long. */
export function shortened(text: string, width: number, fontSize: number): string {
  const letters = [...text];
  const most = lettersIn(width, fontSize);
  return letters.length <= most
    ? text
    : `${letters
        .slice(0, most - 1)
        .join("")
        .trimEnd()}…`;
}

/** About how wide a text is, rather wide than narrow. */
export function widthOf(text: string, fontSize: number): number {
  return [...text].length * widthOfLetter * fontSize;
}

const widthOfLetter = 0.58;

function lettersIn(width: number, fontSize: number): number {
  return Math.max(2, Math.floor(width / (widthOfLetter * fontSize)));
}

function written(value: string | number): string {
  return typeof value === "string" ? value : String(rounded(value));
}

// XML 1.0, production 2: no control characters but tab and line ends, no halves of surrogate pairs.
function isXml(character: string): boolean {
  const code = character.codePointAt(0) ?? 0;
  if (code < 0x20) return code === 0x9 || code === 0xa || code === 0xd;
  return !(code >= 0xd800 && code <= 0xdfff) && code !== 0xfffe && code !== 0xffff;
}
