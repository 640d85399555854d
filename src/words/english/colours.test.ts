import { expect, test } from "vitest";
import { readColour } from "../../engine/cloth/index.ts";
import { voiceOf } from "../measures.ts";
import { american } from "../trade.ts";
import { colourName } from "./colours.ts";

const nameOf = (colour: string) => {
  const lab = readColour(colour)?.lab;
  if (lab === undefined) throw new Error(`${colour} is a color`);
  return colourName(lab, voiceOf(american, "in"));
};

test.each([
  ["#ffffff", "near white"],
  ["#0b0b0d", "near black"],
  ["#808080", "gray"],
  ["#26324a", "dark blue"],
  ["#9fc0e8", "light blue"],
  ["#2846aa", "dark blue"],
  ["#4169e1", "blue"],
  ["#f4e4bc", "cream"],
  ["#6b4423", "dark brown"],
  ["#8a5a2e", "brown"],
  ["#b5694b", "rust"],
  ["#c8102e", "red"],
  ["#f4b6b6", "light pink"],
  ["#e0a800", "yellow"],
  ["#2e8b57", "green"],
  ["#4b2e83", "dark violet"],
])("%s is called %s", (colour, name) => {
  expect(nameOf(colour)).toBe(name);
});
