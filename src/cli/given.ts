import { parseArgs } from "node:util";
import {
  type DisplayUnit,
  type Length,
  length,
  parseLength,
  parseSizePair,
  type Size,
} from "../engine/length/index.ts";
import type { CommandName, CommandProblem } from "../words/index.ts";

type Options = Readonly<Record<string, "value" | "values" | "flag">>;

const optionsOf: Readonly<Record<CommandName, Options>> = {
  size: { top: "value", method: "value", extra: "value" },
  plan: {
    top: "value",
    method: "value",
    back: "value",
    style: "value",
    time: "value",
    wish: "values",
    contrast: "value",
    floor: "value",
    unit: "value",
    step: "value",
    seconds: "value",
    effort: "value",
    seed: "value",
    plans: "value",
    "skip-bad-rows": "flag",
    json: "value",
    svg: "value",
  },
  check: {},
  cards: { paper: "value", pdf: "value" },
  measure: { bar: "value", json: "value", csv: "value", overlay: "value" },
};

/** What each command reads: one file, or as many photos as are named. */
const fileOf: Readonly<Record<CommandName, "leftovers" | "plan" | "photo" | null>> = {
  size: null,
  plan: "leftovers",
  check: "plan",
  cards: null,
  measure: "photo",
};

/** What is written after the command's name, read option by option; every problem met on the way is kept. */
export class Given {
  readonly problems: CommandProblem[] = [];
  readonly wantsHelp: boolean;
  readonly #command: CommandName;
  readonly #values = new Map<string, string>();
  readonly #several = new Map<string, readonly string[]>();
  readonly #flags = new Set<string>();
  readonly #files: string[] = [];

  constructor(command: CommandName, args: readonly string[]) {
    this.#command = command;
    const { tokens } = parseArgs({
      args: [...args],
      // Not strict: strict stops at the first mistake, and she shall hear of all of them.
      strict: false,
      allowPositionals: true,
      tokens: true,
      options: { help: { type: "boolean", short: "h" }, ...parseOptions(optionsOf[command]) },
    });
    this.wantsHelp = tokens.some((token) => token.kind === "option" && token.name === "help");
    for (const token of tokens) {
      if (token.kind === "positional") this.#files.push(token.value);
      if (token.kind === "option") this.#take(token.name, token.rawName, token.value);
    }
    // After an option that lacks its value, what looks like a file may belong to that option.
    if (this.problems.some(({ kind }) => kind === "needs-a-value")) return;
    if (fileOf[command] === "photo") return;
    for (const name of this.#files.slice(fileOf[command] === null ? 0 : 1))
      this.problems.push({ kind: "one-too-many", name });
  }

  #take(name: string, written: string, value: string | undefined): void {
    const options = optionsOf[this.#command];
    if (name === "help") return;
    if (!Object.hasOwn(options, name) || !written.startsWith("--")) {
      this.problems.push({ kind: "unknown-option", option: written, command: this.#command });
    } else if (this.has(name)) {
      this.problems.push({ kind: "given-twice", option: name });
    } else if (options[name] === "values") {
      this.#takeOneMore(name, value ?? "");
    } else if (options[name] === "flag") {
      this.#flags.add(name);
      if (value !== undefined) this.problems.push({ kind: "takes-no-value", option: name });
    } else {
      this.#takeValue(name, value ?? "");
    }
  }

  #takeValue(name: string, value: string): void {
    const missing = isMissing(value);
    this.#values.set(name, missing ? "" : value);
    if (missing) this.problems.push({ kind: "needs-a-value", option: name });
  }

  #takeOneMore(name: string, value: string): void {
    if (isMissing(value)) this.problems.push({ kind: "needs-a-value", option: name });
    else this.#several.set(name, [...(this.#several.get(name) ?? []), value]);
  }

  has(option: string): boolean {
    return this.#values.has(option) || this.#flags.has(option);
  }

  flag(option: string): boolean {
    return this.#flags.has(option);
  }

  /** As written; null where it isn't given or has been found fault with already. */
  text(option: string): string | null {
    const text = this.#values.get(option);
    return text === undefined || text === "" ? null : text;
  }

  file(): string | null {
    const [first] = this.#files;
    const wanted = fileOf[this.#command];
    if (first === undefined && wanted !== null) this.problems.push({ kind: "file-missing", wanted });
    return first ?? null;
  }

  files(): readonly string[] {
    return this.file() === null ? [] : this.#files;
  }

  require(...options: readonly string[]): void {
    for (const option of options) {
      if (!this.has(option)) this.problems.push({ kind: "option-missing", option });
    }
  }

  choice<T extends string>(option: string, choices: readonly T[]): T | null {
    const text = this.text(option);
    return text === null ? null : this.#oneOf(option, text, choices);
  }

  /** Of an option that may be given several times: each choice once. */
  choices<T extends string>(option: string, choices: readonly T[]): readonly T[] {
    const texts = this.#several.get(option) ?? [];
    return [...new Set(texts.flatMap((text) => this.#oneOf(option, text, choices) ?? []))];
  }

  #oneOf<T extends string>(option: string, text: string, choices: readonly T[]): T | null {
    const found = choices.find((choice) => choice === text.toLowerCase());
    if (found === undefined) this.problems.push({ kind: "not-a-choice", option, text, choices });
    return found ?? null;
  }

  /** 0 too: no extra, no floor. */
  length(option: string, unit: DisplayUnit): Length | null {
    const text = this.text(option);
    if (text === null) return null;
    const parsed = parseLength(text, unit);
    if (!parsed.ok && parsed.error.kind === "zero") return length(0);
    if (!parsed.ok) this.problems.push({ kind: "not-a-length", option, problem: parsed.error });
    return parsed.ok ? parsed.value : null;
  }

  size(option: string, unit: DisplayUnit): Size | null {
    const text = this.text(option);
    if (text === null) return null;
    const parsed = parseSizePair(text, unit);
    if (!parsed.ok) this.problems.push({ kind: "not-a-size", option, problem: parsed.error });
    return parsed.ok ? parsed.value : null;
  }

  whole(option: string, least: number, most: number): number | null {
    return this.#counted(option, /^\d+$/, { least, most, whole: true });
  }

  /** Larger than `over`, in decimals. */
  number(option: string, over: number, most: number): number | null {
    return this.#counted(option, /^(\d+(\.\d*)?|\.\d+)$/, { least: over, most, whole: false });
  }

  #counted(
    option: string,
    pattern: RegExp,
    range: { readonly least: number; readonly most: number; readonly whole: boolean },
  ): number | null {
    const text = this.text(option);
    if (text === null) return null;
    const value = pattern.test(text) ? Number(text) : Number.NaN;
    const good = value <= range.most && (range.whole ? value >= range.least : value > range.least);
    if (!good) this.problems.push({ kind: "not-a-number", option, text, ...range });
    return good ? value : null;
  }
}

// `--json --svg a.svg`: the next option is no value of this one.
function isMissing(value: string): boolean {
  return value === "" || /^--?[a-z]/i.test(value);
}

function parseOptions(options: Options) {
  return Object.fromEntries(
    Object.entries(options).map(([name, kind]) => [
      name,
      { type: kind === "flag" ? ("boolean" as const) : ("string" as const) },
    ]),
  );
}
