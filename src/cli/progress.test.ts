import { describe, expect, it } from "vitest";
import { ProgressLine } from "./progress.ts";

function screenOf(isTTY: boolean) {
  const written: string[] = [];
  return { written, isTTY, columns: 12, write: (text: string) => written.push(text) };
}

describe("the progress line", () => {
  it("keeps to one line of a terminal and takes itself away", () => {
    const screen = screenOf(true);
    const line = new ProgressLine(screen);
    line.show("a line that is longer than the terminal is wide");
    line.show("too soon after the last to be read");
    line.clear();
    line.clear();
    expect(screen.written).toEqual(["\r\u001b[2Ka line that", "\r\u001b[2K"]);
  });

  it("says nothing where no one looks on", () => {
    const screen = screenOf(false);
    const line = new ProgressLine(screen);
    line.show("a line");
    line.clear();
    expect(screen.written).toEqual([]);
  });
});
