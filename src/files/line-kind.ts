import type { Kind } from "../engine/cloth/index.ts";
import { type Found, type Line, phraseFrom } from "./line-measures.ts";
import { fillers, kindPhrases, spelledOut } from "./line-words.ts";

/**
 * The word that says what it is. A fabric may be called `blue squares`, so the word behind a number goes before the
 * word in front of one, and either before any other.
 */
export function kindIn(line: Line): Found<Kind> | null {
  const found = [...line.tokens.keys()].flatMap((from) => {
    const phrase = phraseFrom(line, from, (text) => kindPhrases.get(text));
    return phrase === null || isInside(line, from) ? [] : [phrase];
  });
  return (
    found.find(({ from }) => from === 0 || followsNumber(line, from - 1)) ??
    found.find(({ to }) => line.tokens[to]?.kind === "number") ??
    found[0] ??
    null
  );
}

// Of `half square triangle` the last word alone would be a kind too.
function isInside(line: Line, at: number): boolean {
  return [1, 2, 3].some((back) => {
    const longer = at >= back ? phraseFrom(line, at - back, (text) => kindPhrases.get(text)) : null;
    return longer !== null && longer.to > at;
  });
}

function followsNumber(line: Line, at: number): boolean {
  const token = line.tokens[at];
  if (token === undefined) return true;
  if (fillers.has(spelledOut(token.text)) || token.text === '"') return followsNumber(line, at - 1);
  return token.kind === "number" || token.kind === "times";
}
