import type { Plan } from "../src/engine/plan/index.ts";
import { wordsFor } from "../src/words/index.ts";
import type { GalleryQuilt } from "./quilts.ts";

export type Drawn = { readonly quilt: GalleryQuilt; readonly plan: Plan };

/** The page with every picture; what it says of a plan is taken from the plan. */
export function pageOf(drawn: readonly Drawn[]): string {
  const rows = Array.from({ length: Math.ceil(drawn.length / 2) }, (_, at) => {
    const pair = drawn.slice(2 * at, 2 * at + 2);
    return [`| ${pair.map(pictureCell).join(" | ")} |`, `| ${pair.map(wordsCell).join(" | ")} |`];
  });
  return [...head, ...rows.flat(), ""].join("\n");
}

const head = [
  "# Gallery",
  "",
  "Worked heaps, all of them invented, each with the back that Verso plans from it. `npm run gallery` draws the page and",
  "its pictures again: same tables, seeds and efforts, same pictures. A test makes every plan anew and holds it to its",
  "picture; a picture changes only in a commit that says what looks better.",
  "",
  "| | |",
  "|---|---|",
];

function pictureCell({ quilt: { name, title } }: Drawn): string {
  return `[![${title}](pictures/${name}.png)](pictures/${name}.svg)`;
}

function wordsCell({ quilt, plan }: Drawn): string {
  const words = wordsFor("en-US", plan.unit);
  const bought = plan.buy.map((row) => words.buy(row, plan)).join(" ");
  const facts = [
    `${capital(words.style(plan.style))}, ${words.size(plan.back)}`,
    `${capital(words.time(plan.figures.minutes))}`,
    plan.buy.length === 0 ? "Nothing to buy" : `To buy: ${bought.replace(/\.$/, "")}`,
  ];
  return `**[${quilt.title}](heaps/${quilt.name}.csv).** ${facts.join(". ")}.`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
