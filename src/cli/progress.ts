/** Where progress is shown: one line that refreshes. Only a terminal has use for it. */
export type Screen = {
  readonly isTTY?: boolean;
  readonly columns?: number;
  write(text: string): unknown;
};

const clearLine = "\r\u001b[2K";
const pauseMs = 200;

/** The line that says how the planning gets on. On anything but a terminal it says nothing. */
export class ProgressLine {
  readonly #screen: Screen;
  #shownAt = Number.NEGATIVE_INFINITY;
  #isShown = false;

  constructor(screen: Screen) {
    this.#screen = screen;
  }

  show(text: string): void {
    if (this.#screen.isTTY !== true || performance.now() < this.#shownAt + pauseMs) return;
    this.#shownAt = performance.now();
    this.#isShown = true;
    // A line that wraps could not be cleared again.
    this.#screen.write(clearLine + text.slice(0, Math.max(0, (this.#screen.columns || 80) - 1)));
  }

  clear(): void {
    if (this.#isShown) this.#screen.write(clearLine);
    this.#isShown = false;
  }
}
