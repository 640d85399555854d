import fc from "fast-check";
import { describe, expect, test } from "vitest";
import * as Y from "yjs";
import {
  cells,
  heaps,
  keptPlans,
  newLeftovers,
  newRough,
  plainCloths,
  projects,
  settings,
  sizes,
  texts,
  wishes,
} from "../../test/generators/projects.ts";
import { times } from "../engine/cloth/index.ts";
import { newProject, type Project } from "../files/index.ts";
import { ProjectModel } from "./model.ts";
import { sealed } from "./records.ts";
import type { ProjectEdits } from "./types.ts";

const empty = newProject({ title: "First", createdAt: 5 });

/** A tab without storage: what it would keep is put into a list. */
function tab(start: Project | readonly Uint8Array[] = empty, name = "a") {
  const updates: Uint8Array[] = [];
  let now = 0;
  let ids = 0;
  const around = {
    clock: () => now,
    newId: () => `${name}-${ids++}`,
    onUpdate: (update: Uint8Array) => void updates.push(update),
    onChange: () => {},
  };
  const model =
    "title" in start ? ProjectModel.of(start, around) : ProjectModel.from(start.map(record), around);
  return {
    model,
    updates,
    later: (milliseconds: number) => {
      now += milliseconds;
    },
  };
}

function record(bytes: Uint8Array, index = 0) {
  return sealed({ project: "p", seq: index + 1, at: 0, bytes });
}

/** One edit, whatever the project looks like by then; places are taken modulo what is there. */
type Edit = (edits: ProjectEdits, project: Project) => void;

function at<T extends { readonly id: string }>(list: readonly T[], index: number): string {
  return list[index % Math.max(1, list.length)]?.id ?? "none";
}

const place = fc.nat(30);
const partial = <T>(of: fc.Arbitrary<T>, names: readonly (keyof T)[]): fc.Arbitrary<Partial<T>> =>
  fc.tuple(of, fc.subarray([...names])).map(([whole, some]) => {
    const part: Partial<T> = {};
    for (const name of some) part[name] = whole[name];
    return part;
  });

const anEdit: fc.Arbitrary<Edit> = fc.oneof(
  texts.map(
    (title): Edit =>
      (edits) =>
        edits.setTitle(title),
  ),
  partial(settings, ["unit", "step", "floor"]).map(
    (part): Edit =>
      (edits) =>
        edits.setSettings(part),
  ),
  partial(sizes, ["topWidths", "topHeights", "method", "extra"]).map(
    (part): Edit =>
      (edits) =>
        edits.setSize(part),
  ),
  fc.constantFrom(...times).map(
    (time): Edit =>
      (edits) =>
        edits.setTime(time),
  ),
  partial(plainCloths, ["name", "colour"]).map(
    (part): Edit =>
      (edits) =>
        edits.setPlain(part),
  ),
  partial(heaps, ["cutting", "reserveLabel"]).map(
    (part): Edit =>
      (edits) =>
        edits.setHeap(part),
  ),
  wishes.map(
    (wish): Edit =>
      (edits) =>
        edits.setWishes(wish),
  ),
  fc.tuple(fc.array(newLeftovers, { maxLength: 3 }), place).map(
    ([rows, before]): Edit =>
      (edits, { leftovers }) => {
        edits.addRows(rows, at(leftovers, before));
      },
  ),
  fc.tuple(fc.array(place, { maxLength: 3 }), cells, fc.option(texts)).map(
    ([rows, change, line]): Edit =>
      (edits, { leftovers }) => {
        const ids = rows.map((row) => at(leftovers, row));
        edits.changeRows(ids, { cells: change, ...(line === null ? {} : { line }) });
      },
  ),
  place.map(
    (row): Edit =>
      (edits, { leftovers }) => {
        edits.changeRow(at(leftovers, row), { cells: { width: null, fabric: null } });
      },
  ),
  fc.array(place, { maxLength: 2 }).map(
    (rows): Edit =>
      (edits, { leftovers }) => {
        edits.removeRows(rows.map((row) => at(leftovers, row)));
      },
  ),
  fc.tuple(place, fc.option(place)).map(
    ([row, before]): Edit =>
      (edits, { leftovers }) => {
        edits.moveRow(at(leftovers, row), before === null ? null : at(leftovers, before));
      },
  ),
  newRough.map(
    (stock): Edit =>
      (edits) =>
        void edits.addRough(stock),
  ),
  fc.tuple(place, newRough).map(
    ([one, stock]): Edit =>
      (edits, { rough }) =>
        edits.changeRough(at(rough, one), stock),
  ),
  place.map(
    (one): Edit =>
      (edits, { rough }) =>
        edits.removeRough(at(rough, one)),
  ),
  fc.option(keptPlans).map(
    (plan): Edit =>
      (edits) =>
        edits.keepPlan(plan),
  ),
  fc.tuple(fc.constantFrom("step-1", "step-2", "step-3"), fc.boolean()).map(
    ([step, done]): Edit =>
      (edits) =>
        edits.tick(step, done),
  ),
);
const someEdits = fc.array(anEdit, { maxLength: 25 });

const runs = Number(process.env.VERSO_RUNS ?? 1);

describe("laws of editing", () => {
  test("undo after undo leads back to every state there was, redo forth again", () => {
    fc.assert(
      fc.property(projects, someEdits, (start, edits) => {
        const { model, later } = tab(start);
        const states = [model.project];
        for (const edit of edits) {
          later(5_000);
          const steps = model.canUndo;
          edit(model.edits, model.project);
          expect(model.canUndo || !steps).toBe(true);
          states.push(model.project);
        }
        const seen = [model.project];
        while (model.canUndo) {
          model.undo();
          seen.push(model.project);
        }
        // Edits that change nothing are no steps.
        expect(seen.reverse()).toEqual(distinct(states));
        while (model.canRedo) model.redo();
        expect(model.project).toEqual(states.at(-1));
      }),
      { numRuns: 200 * runs },
    );
  });

  test("what was kept gives the same project, however it is cut into records", () => {
    fc.assert(
      fc.property(projects, someEdits, (start, edits) => {
        const { model, updates } = tab(start);
        for (const edit of edits) edit(model.edits, model.project);
        for (let steps = 0; steps < 3; steps++) model.undo();
        expect(tab(updates).model.project).toEqual(model.project);
        expect(tab([Y.mergeUpdates(updates)]).model.project).toEqual(model.project);
      }),
      { numRuns: 100 * runs },
    );
  });

  test("two tabs that edit at once end the same, and undo in one leaves the other's edits", () => {
    const both = fc.array(fc.tuple(fc.boolean(), fc.boolean(), anEdit), { maxLength: 25 });
    fc.assert(
      fc.property(projects, both, fc.nat(5), (start, edits, undos) => {
        const one = tab(start, "one");
        const other = tab(one.updates, "other");
        const exchange = exchanger(one, other);
        for (const [isOne, exchangesNow, edit] of edits) {
          const { model } = isOne ? one : other;
          edit(model.edits, model.project);
          if (exchangesNow) exchange();
        }
        for (let steps = 0; steps < undos; steps++) one.model.undo();
        exchange();
        expect(one.model.project).toEqual(other.model.project);
        expect(one.model.problems).toEqual([]);
      }),
      { numRuns: 200 * runs },
    );
  });

  test("going back to an earlier project is one step, undone like any other", () => {
    fc.assert(
      fc.property(projects, projects, (start, earlier) => {
        const { model } = tab(start);
        model.become(earlier);
        expect(model.project).toEqual(earlier);
        model.undo();
        expect(model.project).toEqual(start);
      }),
      { numRuns: 200 * runs },
    );
  });
});

function distinct(states: readonly Project[]): readonly Project[] {
  return states.filter((state, index) => {
    const before = states[index - 1];
    return before === undefined || JSON.stringify(plainly(before)) !== JSON.stringify(plainly(state));
  });
}

function plainly(project: Project) {
  return { ...project, ticked: [...project.ticked] };
}

type Tab = ReturnType<typeof tab>;

function exchanger(one: Tab, other: Tab) {
  let [fromOne, fromOther] = [one.updates.length, other.updates.length];
  return () => {
    const [news, others] = [one.updates.slice(fromOne), other.updates.slice(fromOther)];
    other.model.take(news.map(record));
    one.model.take(others.map(record));
    [fromOne, fromOther] = [one.updates.length, other.updates.length];
  };
}

describe("worked cases", () => {
  const strip = { line: "4 strips 2 1/2 x 31 teal dots", cells: {}, others: {} };

  test("letters typed into one field within a second are one step; after a pause they are two", () => {
    const { model, later } = tab();
    for (const title of ["C", "Ca", "Cab"]) {
      model.edits.setTitle(title);
      later(300);
    }
    later(2_000);
    model.edits.setTitle("Cabin");
    model.undo();
    expect(model.project.title).toBe("Cab");
    model.undo();
    expect(model.project.title).toBe("First");
  });

  test("each change of a plan, mark or choice is a step of its own, however quick", () => {
    const { model } = tab();
    const [id = ""] = model.edits.addRows([strip]);
    for (const value of ["must", "keep-back"] as const)
      model.edits.changeRow(id, { cells: { use: { text: value, value } } });
    for (const plan of ["one", "other"]) model.edits.setWishes({ byHand: { plan, job: "" } });
    model.edits.setTime("afternoon");
    model.edits.setTime("any");
    const seen = () => {
      const { wishes, leftovers, time } = model.project;
      return [wishes.byHand?.plan, leftovers[0]?.cells.use?.value, time];
    };
    const steps = [seen()];
    for (let undone = 0; undone < 6; undone++) {
      model.undo();
      steps.push(seen());
    }
    expect(steps).toEqual([
      ["other", "keep-back", "any"],
      ["other", "keep-back", "afternoon"],
      ["other", "keep-back", empty.time],
      ["one", "keep-back", empty.time],
      [undefined, "keep-back", empty.time],
      [undefined, "must", empty.time],
      [undefined, undefined, empty.time],
    ]);
  });

  test("two tabs at two cells of one row: both changes stay", () => {
    const one = tab(empty, "one");
    const [id = ""] = one.model.edits.addRows([strip]);
    const other = tab(one.updates, "other");
    const exchange = exchanger(one, other);
    one.model.edits.changeRow(id, { cells: { fabric: { text: "oat", value: "oat" } } });
    other.model.edits.changeRow(id, { cells: { count: { text: "4", value: 4 } } });
    exchange();
    expect(one.model.project.leftovers[0]?.cells).toEqual({
      fabric: { text: "oat", value: "oat" },
      count: { text: "4", value: 4 },
    });
  });

  test("a row that two tabs move at once stands in one place in both", () => {
    const one = tab(empty, "one");
    const [a = "", b = "", c = ""] = one.model.edits.addRows([strip, strip, strip]);
    const other = tab(one.updates, "other");
    const exchange = exchanger(one, other);
    one.model.edits.moveRow(c, a);
    other.model.edits.moveRow(c, b);
    exchange();
    const ids = one.model.project.leftovers.map(({ id }) => id);
    expect(ids).toHaveLength(3);
    expect(other.model.project.leftovers.map(({ id }) => id)).toEqual(ids);
  });

  test("undo leaves alone what another tab changed since", () => {
    const one = tab(empty, "one");
    const other = tab(one.updates, "other");
    const exchange = exchanger(one, other);
    one.model.edits.setTitle("Mine");
    exchange();
    other.model.edits.setTitle("Theirs");
    other.model.edits.setTime("any");
    exchange();
    one.model.undo();
    expect(one.model.project).toMatchObject({ title: "Theirs", time: "any" });
  });

  test("a tick belongs to its plan: another plan has none, undo brings plan and ticks back", () => {
    const { model } = tab();
    const plan = { text: "{}", job: "j", style: "squares", seed: 1, effort: 9, keptAt: 100 } as const;
    model.edits.tick("step-1", true);
    expect(model.project.ticked.size).toBe(0);
    model.edits.keepPlan(plan);
    model.edits.tick("step-1", true);
    model.edits.keepPlan({ ...plan, keptAt: 200 });
    expect(model.project.ticked.size).toBe(0);
    model.undo();
    expect(model.project).toMatchObject({ plan, ticked: new Set(["step-1"]) });
  });

  test("an edit of one row leaves every other row the same object", () => {
    const { model } = tab();
    const [, second = ""] = model.edits.addRows([strip, strip, strip]);
    const before = model.project;
    model.edits.changeRow(second, { line: "5 strips" });
    expect(model.project.leftovers[0]).toBe(before.leftovers[0]);
    expect(model.project.leftovers[1]).not.toBe(before.leftovers[1]);
    expect(model.project.size).toBe(before.size);
  });

  test("a whole book in one cell is kept as far as a cell goes, and half a letter as a sign for it", () => {
    const { model } = tab();
    const text = "x".repeat(100_000);
    model.edits.setTitle(`${text}`);
    const [id = ""] = model.edits.addRows([{ line: text, cells: {}, others: { [text]: text } }]);
    model.edits.changeRow(id, { cells: { name: { text, value: text } } });
    model.edits.setPlain({ name: "half \ud83d" });
    expect(model.problems).toEqual([]);
    expect(model.project.title).toHaveLength(200);
    expect(model.project.leftovers[0]?.cells.name?.text).toHaveLength(500);
    expect(model.project.plain.name).toBe("half \ufffd");
  });
});

describe("a document nobody's screen has made", () => {
  function hostile(spoil: (doc: Y.Doc) => void) {
    const { updates } = tab({
      ...empty,
      title: "Good",
      leftovers: [{ id: "r", line: "x", cells: {}, others: {} }],
    });
    const doc = new Y.Doc();
    for (const update of updates) Y.applyUpdate(doc, update);
    spoil(doc);
    return tab([Y.encodeStateAsUpdate(doc)]).model;
  }

  test.each<[string, (doc: Y.Doc) => void, string]>([
    ["a title that is a number", (doc) => doc.getMap("facts").set("title", 5), "title"],
    ["no title", (doc) => doc.getMap("facts").delete("title"), "title"],
    ["an unknown method", (doc) => doc.getMap("facts").set("size.method", "glue"), "size.method"],
    ["a row that is a text", (doc) => doc.getMap("leftovers").set("bad", "row"), "leftovers.bad"],
    [
      "a row that is an empty map",
      (doc) => doc.getMap("leftovers").set("bad", new Y.Map()),
      "leftovers.bad.line",
    ],
    ["rough stock of no kind", (doc) => doc.getMap("rough").set("bad", { kind: "wool" }), "rough.bad.kind"],
    ["a nested type as a fact", (doc) => doc.getMap("facts").set("plan", new Y.Map()), "plan.text"],
  ])("%s is named, all else is there", (_, spoil, path) => {
    const model = hostile(spoil);
    expect(model.problems.map((problem) => problem.path)).toContain(path);
    expect(model.project.leftovers.some(({ id }) => id === "r")).toBe(true);
    model.edits.setTitle("Still works");
    expect(model.project.title).toBe("Still works");
  });

  test("an order of odd things shows every row once", () => {
    const model = hostile((doc) => doc.getArray("order").insert(0, [5, null, "gone", "r", "r", { a: 1 }]));
    expect(model.project.leftovers.map(({ id }) => id)).toEqual(["r"]);
  });

  test("one of a later Verso can be looked at; edits and undo do nothing", () => {
    const model = hostile((doc) => doc.getMap("about").set("version", 99));
    model.edits.setTitle("Mine");
    model.undo();
    expect(model.isReadOnly).toBe(true);
    expect(model.project.title).toBe("Good");
  });

  test("arbitrary bytes sealed as a record are reported, never thrown", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
        const { updates } = tab({ ...empty, title: "Good" });
        const { model } = tab([...updates, bytes]);
        expect(model.project.title).toBe("Good");
      }),
    );
  });
});
