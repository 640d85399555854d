import { readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import fc from "fast-check";
import { strFromU8, unzipSync } from "fflate";
import { expect, test } from "vitest";
import { handMadePlan } from "../../test/generators/handMadePlan.ts";
import { projects } from "../../test/generators/projects.ts";
import { styles } from "../engine/back/index.ts";
import {
  amounts,
  contrasts,
  directions,
  grains,
  keeps,
  kinds,
  methods,
  times,
  uses,
  wishesAsked,
} from "../engine/cloth/index.ts";
import { columns, writePlan, writeProject } from "./index.ts";
import { readProjectJson } from "./project-json.ts";

const file = new URL("../../docs/schema/verso-project.schema.json", import.meta.url);
const schema = JSON.parse(readFileSync(file, "utf8"));
const ajv = new Ajv2020({ strict: true, strictRequired: false, strictTypes: false, allErrors: true });
const isProject = ajv.compile(schema);
const text = writePlan(handMadePlan());

const written = projects.map((project) => {
  const file = writeProject({ ...project, plan: project.plan && { ...project.plan, text } }, 0);
  return strFromU8(unzipSync(file)["project.json"] ?? new Uint8Array());
});

test("the project's schema holds for every project as it is written, and names each of its fields", () => {
  fc.assert(
    fc.property(written, (json) => {
      isProject(JSON.parse(json));
      expect(isProject.errors ?? []).toEqual([]);
      expect(new Set(Object.keys(schema.properties))).toEqual(new Set(Object.keys(JSON.parse(json))));
    }),
    { numRuns: 200 },
  );
});

test("it names the same words as the engine", () => {
  const { properties, $defs } = schema;
  const cells = $defs.cells.properties;
  expect(Object.keys(cells)).toEqual([...columns]);
  const wordsOf = (column: string) => cells[column].properties.value.enum;
  expect(wordsOf("kind")).toEqual([...kinds, null]);
  expect(wordsOf("keep")).toEqual([...keeps, null]);
  expect(wordsOf("use")).toEqual([...uses, null]);
  expect(wordsOf("direction")).toEqual([...directions, null]);
  expect(wordsOf("grain")).toEqual([...grains, null]);
  expect(properties.size.properties.method.enum).toEqual([...methods]);
  expect(properties.time.enum).toEqual([...times]);
  expect(properties.wishes.properties.style.enum).toEqual([...styles, null]);
  expect(properties.wishes.properties.amount.enum).toEqual([...amounts]);
  expect(properties.wishes.properties.asked.items.enum).toEqual([...wishesAsked]);
  expect(properties.wishes.properties.contrast.enum).toEqual([...contrasts, null]);
});

test("what it refuses for its shape the reader refuses, and the other way round", () => {
  const values = fc.constantFrom<unknown>(null, "", -1, 0.5, {}, [], true, undefined);
  fc.assert(
    fc.property(written, fc.nat(10_000), values, (json, place, value) => {
      const spoilt: unknown = JSON.parse(json);
      const places = placesIn(spoilt).filter(([first]) => first !== "plan");
      put(spoilt, places[place % places.length] ?? [], value);
      const project = JSON.parse(JSON.stringify(spoilt));
      const read = readProjectJson({ ...project, plan: project.plan && { ...project.plan, text } });
      const isOurs = isProject(project);
      // Ids that come twice and sizes between the marks are beyond a schema.
      if (read.ok || read.error.every(({ kind }) => kind !== "twice" && kind !== "not-a-length")) {
        expect(read.ok ? "read" : read.error).toEqual(isOurs ? "read" : expect.any(Array));
      }
    }),
    { numRuns: 1_500 },
  );
});

function placesIn(value: unknown, place: readonly string[] = []): (readonly string[])[] {
  if (typeof value !== "object" || value === null) return [place];
  const inside = Object.entries(value).flatMap(([key, part]) => placesIn(part, [...place, key]));
  return place.length === 0 ? inside : [place, ...inside];
}

function put(json: unknown, place: readonly string[], value: unknown): void {
  const [key = "", ...rest] = place;
  const at = json as Record<string, unknown>;
  if (rest.length === 0) at[key] = value;
  else put(at[key], rest, value);
}
