import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { parseSync } from "@swc/core";
import { describe, expect, it } from "vitest";
import { root } from "./planted.ts";

/** What one can read or hear of a page, although it stands in an attribute. */
const read = ["alt", "aria-description", "aria-label", "aria-roledescription", "aria-valuetext", "label"];
const shown = [...read, "description", "errorMessage", "placeholder", "text", "title"];

const isNode = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null;

/** Letters that stand in the markup itself, or in an attribute that is shown, and do not come from the words. */
function textsIn(node: unknown): string[] {
  if (!isNode(node)) return [];
  if (node.type === "JSXText") return hasLetters(node.value) ? [String(node.value).trim()] : [];
  if (node.type === "JSXExpressionContainer" && isNode(node.expression)) {
    const { type, value } = node.expression;
    if (type === "StringLiteral") return hasLetters(value) ? [String(value)] : [];
  }
  if (node.type === "JSXAttribute" && isNode(node.name) && isNode(node.value)) {
    const name = String(node.name.value);
    const { type, value } = node.value;
    if (type === "StringLiteral")
      return shown.includes(name) && hasLetters(value) ? [`${name}: ${value}`] : [];
    if (!shown.includes(name)) return inAttribute(node.value);
  }
  return Object.values(node).flatMap(textsIn);
}

// What is computed for an attribute that isn't shown may still hold elements.
function inAttribute(value: unknown): string[] {
  if (!isNode(value)) return [];
  if (value.type === "JSXElement" || value.type === "JSXFragment") return textsIn(value);
  return Object.values(value).flatMap(inAttribute);
}

const hasLetters = (value: unknown) => /\p{L}/u.test(String(value));

const textsOf = (source: string) =>
  textsIn(parseSync(source, { syntax: "typescript", tsx: true, target: "es2022" }).body);

describe("the scan itself", () => {
  it.each([
    ["<p>Save it</p>", 1],
    ['<p>{"Save it"}</p>', 1],
    ['<img alt="A quilt" />', 1],
    ['<Notice title="Not there" />', 1],
    ['<Notice title={ok ? "a" : words.b}>{words.a}</Notice>', 0],
    ['<A slot={<p>Save it</p>} className="button next" />', 1],
    ['<p className="small">{words.saved} · {count}</p>', 0],
    ['<a href="#/">{words.app}</a>', 0],
  ])("%s", (source, count) => {
    expect(textsOf(`const a = ${source};`)).toHaveLength(count);
  });
});

describe("no text stands in a page itself", () => {
  const app = join(root, "src", "app");
  const files = readdirSync(app, { recursive: true, encoding: "utf8" }).filter((file) =>
    file.endsWith(".tsx"),
  );

  it("has pages to look at", () => {
    expect(files.length).toBeGreaterThan(8);
  });

  it.each(files)("%s", (file) => {
    expect(textsOf(readFileSync(join(app, file), "utf8"))).toEqual([]);
  });
});
