import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { measuredLength } from "../files/index.ts";
import { looks, openPreferences, type Preferences, usualPreferences } from "./preferences.ts";

/** As a browser's: text by key. */
function madeStorage(kept: Record<string, string> = {}): Storage {
  const texts = new Map(Object.entries(kept));
  return {
    get length() {
      return texts.size;
    },
    clear: () => texts.clear(),
    key: (at) => [...texts.keys()][at] ?? null,
    getItem: (name) => texts.get(name) ?? null,
    setItem: (name, text) => void texts.set(name, text),
    removeItem: (name) => void texts.delete(name),
  };
}

const full: Storage = {
  ...madeStorage(),
  setItem: () => {
    throw new DOMException("full", "QuotaExceededError");
  },
};

const measures = fc
  .constantFrom("1/4", "½", "0.75 cm", "7 mm", "nonsense")
  .map((text) => measuredLength(text, "in"));

const preferences: fc.Arbitrary<Preferences> = fc.record({
  look: fc.constantFrom(...looks),
  words: fc.constantFrom(null, "en-GB", "de"),
  newBacks: fc.record({
    unit: fc.constantFrom(null, "in" as const, "cm" as const),
    step: fc.constant(null),
    seam: measures,
    plainSeam: measures,
  }),
  paper: fc.constantFrom(null, "a4" as const, "letter" as const),
  bars: fc.record({ letter: fc.option(measures, { nil: null }), a4: fc.option(measures, { nil: null }) }),
  copies: fc.dictionary(fc.uuid(), fc.record({ at: fc.option(fc.nat(), { nil: null }), changes: fc.nat() })),
  askedToPersist: fc.boolean(),
  saidApart: fc.boolean(),
});

describe("preferences", () => {
  test("what was chosen is there when the app is opened again", () => {
    fc.assert(
      fc.property(preferences, (chosen) => {
        const storage = madeStorage();
        openPreferences(storage).change(chosen);
        expect(openPreferences(storage).state()).toEqual(chosen);
      }),
    );
  });

  test.each(["", "nonsense", "null", "[]", '{"look":"pink","words":7,"copies":{"a":{"at":-1}}}'])(
    "whatever lies there, it opens: %s",
    (text) => {
      const opened = openPreferences(madeStorage({ "verso-preferences": text }));
      expect(opened.state()).toEqual(usualPreferences);
    },
  );

  test("a part that can't be used takes nothing else with it", () => {
    const text = '{"look":"dark","words":"en-AU","newBacks":{"unit":"cm","seam":"wide"},"copies":3}';
    expect(openPreferences(madeStorage({ "verso-preferences": text })).state()).toEqual({
      ...usualPreferences,
      look: "dark",
      words: "en-AU",
      newBacks: { ...usualPreferences.newBacks, unit: "cm" },
    });
  });

  test.each([
    ["without storage", null],
    ["where there is no room", full],
  ])("%s they last as long as the page", (_, storage) => {
    const opened = openPreferences(storage);
    opened.change({ look: "dark" });
    opened.changed("a");
    expect(opened.state()).toMatchObject({ look: "dark", copies: { a: { at: null, changes: 1 } } });
  });

  test("edits are counted until the project lies in a file of her own", () => {
    const opened = openPreferences(madeStorage());
    opened.changed("a");
    opened.changed("a");
    opened.changed("b");
    opened.copied(["a", "c"], 5);
    expect(opened.state().copies).toEqual({
      a: { at: 5, changes: 0 },
      b: { at: null, changes: 1 },
      c: { at: 5, changes: 0 },
    });
  });

  test("two tabs that share storage lose nothing of each other's", () => {
    const storage = madeStorage();
    const [one, other] = [openPreferences(storage), openPreferences(storage)];
    one.change({ look: "contrast" });
    other.changed("a");
    expect(openPreferences(storage).state()).toMatchObject({
      look: "contrast",
      copies: { a: { changes: 1 } },
    });
  });

  test("forgotten, nothing is left", () => {
    const storage = madeStorage();
    const opened = openPreferences(storage);
    opened.change({ look: "dark" });
    opened.forget();
    expect([opened.state(), storage.length]).toEqual([usualPreferences, 0]);
  });
});
