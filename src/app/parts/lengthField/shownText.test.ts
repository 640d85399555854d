import { describe, expect, test } from "vitest";
import { inches } from "../../../engine/length/index.ts";
import { measuredLength } from "../../../files/index.ts";
import { problemIn, readingsOf, shownText } from "./shownText.ts";

describe("what stands in a field for a length", () => {
  test.each([
    ["2 1/2", "in", "in", "2 1/2"],
    ["60", "in", "cm", "60 in"],
    ["60 ", "in", "cm", "60 in"],
    ["6,5 cm", "in", "cm", "6,5 cm"],
    ["6,5 cm", "cm", "in", "6,5 cm"],
    ["152", "cm", "in", "152 cm"],
    // Zero is zero in any unit, but it is not read as a length: it keeps its own.
    ["0", "in", "cm", "0 in"],
    // What could not be read says nothing of its unit.
    ["abc", "in", "cm", "abc"],
  ] as const)("%s, written in %s, looked at in %s", (text, written, now, shown) => {
    expect(shownText(measuredLength(text, written), now)).toBe(shown);
  });

  test("what is shown reads as the same length as what she wrote", () => {
    const written = measuredLength("60 1/2", "in");
    const again = measuredLength(shownText(written, "cm"), "cm");
    expect(again?.value).toBe(inches(121, 2));
  });

  test("an empty field is no problem, an unreadable one is", () => {
    expect(problemIn(null)).toBeNull();
    expect(problemIn(measuredLength("2 1/2", "in"))).toBeNull();
    expect(problemIn(measuredLength("0", "in"))).toBeNull();
    expect(problemIn(measuredLength("2 foo", "in"))).toMatchObject({ kind: "unknown-unit" });
  });

  test("both readings of what could be two sizes are offered", () => {
    const problem = problemIn(measuredLength("21/2", "in"));
    expect(problem && readingsOf(problem)).toEqual(["2 1/2", "10 1/2"]);
  });
});
