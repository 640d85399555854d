import * as v from "valibot";
import { type Paper, papers } from "../engine/cards/index.ts";
import { displayUnits, type Length } from "../engine/length/index.ts";
import { lengthMeasure, type Measured, type ProjectSettings } from "../files/index.ts";

/** How the app looks; cloth keeps its colours in all of them. `contrast`: ink on white, or white on black. */
export const looks = ["device", "light", "dark", "contrast"] as const;
export type Look = (typeof looks)[number];

/** What a new back begins with; `null`: what is usual. */
export type NewBackSettings = Pick<ProjectSettings, "step" | "seam" | "plainSeam"> & {
  readonly unit: ProjectSettings["unit"] | null;
};

/** How one project stands outside of this browser. */
export type OwnCopy = {
  /** When it was last saved as a file of her own: milliseconds since 1970, UTC. `null`: never. */
  readonly at: number | null;
  /** Edits since then. */
  readonly changes: number;
};

/** What belongs to this device and to no back. */
export type Preferences = {
  readonly look: Look;
  /** A word set by its locale; `null`: what the browser says she reads. */
  readonly words: string | null;
  readonly newBacks: NewBackSettings;
  /** What she prints on; `null`: what is usual where she lives. */
  readonly paper: Paper | null;
  /** What her ruler said of the line on the cards she printed; `null`: as it should be. */
  readonly bars: { readonly [P in Paper]: Measured<Length> | null };
  /** By project. */
  readonly copies: Readonly<Record<string, OwnCopy>>;
  /** Whether the browser was asked once to keep everything for good. */
  readonly askedToPersist: boolean;
  /** Whether it was said that a browser tab and the installed app keep separate data. */
  readonly saidApart: boolean;
};

export const usualPreferences: Preferences = {
  look: "device",
  words: null,
  newBacks: { unit: null, step: null, seam: null, plainSeam: null },
  paper: null,
  bars: { letter: null, a4: null },
  copies: {},
  askedToPersist: false,
  saidApart: false,
};

export type PreferencesStore = {
  readonly state: () => Preferences;
  readonly subscribe: (listener: () => void) => () => void;
  readonly change: (change: Partial<Preferences>) => void;
  /** One more edit of a project. */
  readonly changed: (project: string) => void;
  /** These projects lie in a file of her own, from `at` on. */
  readonly copied: (projects: readonly string[], at: number) => void;
  /** Back to what is usual, with nothing left on the device. */
  readonly forget: () => void;
};

const key = "verso-preferences";
const measure = v.fallback(v.nullable(lengthMeasure.schema), null);
const moment = v.nullable(v.pipe(v.number(), v.integer(), v.minValue(0)));
const copy = v.object({ at: moment, changes: v.pipe(v.number(), v.integer(), v.minValue(0)) });

// Each part by itself: what can't be used takes nothing else with it.
const schema = v.object({
  look: v.fallback(v.picklist(looks), usualPreferences.look),
  words: v.fallback(v.nullable(v.pipe(v.string(), v.maxLength(20))), null),
  newBacks: v.fallback(
    v.object({
      unit: v.fallback(v.nullable(v.picklist(displayUnits)), null),
      step: measure,
      seam: measure,
      plainSeam: measure,
    }),
    usualPreferences.newBacks,
  ),
  paper: v.fallback(v.nullable(v.picklist(papers)), null),
  bars: v.fallback(v.object({ letter: measure, a4: measure }), usualPreferences.bars),
  copies: v.fallback(v.record(v.string(), copy), {}),
  askedToPersist: v.fallback(v.boolean(), false),
  saidApart: v.fallback(v.boolean(), false),
});

/**
 * Her preferences, there at once, so that the first thing drawn looks as she wants it. Nothing here throws: where the
 * browser keeps nothing they last as long as the page. Other tabs hear of a change.
 */
export function openPreferences(storage: Storage | null): PreferencesStore {
  const listeners = new Set<() => void>();
  let state = readFrom(storage);
  const show = (now: Preferences) => {
    state = now;
    for (const listener of [...listeners]) listener();
  };
  // Read anew each time: another tab may have written meanwhile.
  const change = (made: (now: Preferences) => Partial<Preferences>) => {
    const now = storage === null ? state : readFrom(storage, state);
    show({ ...now, ...made(now) });
    writeTo(storage, state);
  };
  if (typeof addEventListener === "function")
    addEventListener("storage", (event) => {
      if (event.key === key || event.key === null) show(readFrom(storage));
    });
  return {
    state: () => state,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    change: (part) => change(() => part),
    changed: (project) =>
      change(({ copies }) => {
        const { at, changes } = copies[project] ?? { at: null, changes: 0 };
        return { copies: { ...copies, [project]: { at, changes: changes + 1 } } };
      }),
    copied: (projects, at) =>
      change(({ copies }) => ({
        copies: { ...copies, ...Object.fromEntries(projects.map((id) => [id, { at, changes: 0 }])) },
      })),
    forget: () => {
      writeTo(storage, null);
      show(usualPreferences);
    },
  };
}

function readFrom(storage: Storage | null, otherwise = usualPreferences): Preferences {
  try {
    const text = storage?.getItem(key) ?? null;
    if (text === null) return otherwise;
    const read = v.safeParse(schema, JSON.parse(text));
    return read.success ? read.output : usualPreferences;
  } catch {
    return otherwise;
  }
}

function writeTo(storage: Storage | null, preferences: Preferences | null): void {
  try {
    if (preferences === null) storage?.removeItem(key);
    else storage?.setItem(key, JSON.stringify(written(preferences)));
  } catch {
    // No room, or a private window: they last as long as the page.
  }
}

function written(preferences: Preferences) {
  const { unit, step, seam, plainSeam } = preferences.newBacks;
  const write = (one: typeof step) => (one === null ? null : lengthMeasure.write(one));
  const newBacks = { unit, step: write(step), seam: write(seam), plainSeam: write(plainSeam) };
  const { letter, a4 } = preferences.bars;
  return { ...preferences, newBacks, bars: { letter: write(letter), a4: write(a4) } };
}
