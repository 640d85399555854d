import fc from "fast-check";
import { strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { isEverything, readEverything, writeEverything } from "./everything.ts";
import { readProject, writeProject } from "./project.ts";
import { newProject } from "./project-new.ts";

const titled = (title: string) => newProject({ title, createdAt: 1_000 });
const strip = { id: "one", line: "4 strips 2 1/2 x 31", cells: {}, others: {} };
const fileOf = (...titles: string[]) =>
  writeEverything(
    titles.map((title) => writeProject(titled(title), 1_000)),
    writeProject({ ...titled(""), leftovers: [strip] }, 1_000),
    Date.UTC(2031, 4, 1),
  );

describe("everything in one file", () => {
  test("what goes in comes out, in order", () => {
    fc.assert(
      fc.property(fc.array(fc.string({ maxLength: 30 }), { maxLength: 6 }), (titles) => {
        const read = readEverything(fileOf(...titles));
        expect(read).toEqual({
          ok: true,
          value: {
            projects: titles.map((title) => ({ project: titled(title), pictures: new Map() })),
            shelf: { leftovers: [strip], pictures: new Map() },
            damaged: [],
          },
        });
      }),
      { numRuns: 30 },
    );
  });

  test("each back in it is a file that opens by itself", () => {
    const { "back-0002.verso": second } = unzipSync(fileOf("Ida", "Oak"));
    expect(second && readProject(second)).toEqual({ ok: true, value: titled("Oak") });
  });

  test("a damaged back is named and takes no other with it", () => {
    const parts = unzipSync(fileOf("Ida", "Oak", "Fern"));
    const read = readEverything(zipSync({ ...parts, "back-0002.verso": strToU8("spoilt") }));
    expect(read).toMatchObject({
      ok: true,
      value: {
        projects: [{ project: { title: "Ida" } }, { project: { title: "Fern" } }],
        damaged: [{ entry: "back-0002.verso", problems: [{ kind: "entry-damaged" }] }],
      },
    });
  });

  test("one back alone is no such file, and neither is a letter", () => {
    for (const bytes of [writeProject(titled("Ida"), 0), strToU8("a letter"), new Uint8Array()]) {
      expect(isEverything(bytes)).toBe(false);
      expect(readEverything(bytes).ok).toBe(false);
    }
    expect(isEverything(fileOf())).toBe(true);
  });

  test("one of a later Verso is not guessed at", () => {
    const later = zipSync({ "manifest.json": strToU8('{"format":"verso-everything","version":2}') });
    expect(readEverything(later)).toMatchObject({
      ok: false,
      error: [{ kind: "newer-version", version: 2 }],
    });
  });

  test("whatever the bytes are, it never throws", () => {
    const whole = fileOf("Ida", "Oak");
    fc.assert(
      fc.property(fc.nat(whole.length - 1), fc.nat(255), fc.nat(whole.length), (at, byte, end) => {
        const spoilt = whole.slice(0, Math.max(end, at + 1));
        spoilt[at] = byte;
        const read = readEverything(spoilt);
        if (read.ok)
          for (const { project } of read.value.projects) expect(["Ida", "Oak"]).toContain(project.title);
      }),
      { numRuns: 300 },
    );
  });
});
