import { describe, expect, it } from "vitest";
import { measuredLength, newProject } from "../../../files/index.ts";
import type { Preferences } from "../../../store/index.ts";
import { printedOf } from "../../parts/paper.ts";
import type { PhotoAnswer } from "../../worker/photo/measurePhotos.ts";
import type { FoundPiece } from "../../worker/photo/messages.ts";
import { withoutPiece, withTaken } from "./pieces.ts";
import { PhotoTable } from "./table.ts";

const square = {
  kind: "square",
  width: 3,
  height: 3,
  measured: { width: 3.1, height: 3.1 },
  pixels: [],
  colours: [{ lab: { l: 50, a: 0, b: 0 }, share: 1 }],
  busyness: 1,
  check: [],
} as const;

const picture = new Blob();
const found: PhotoAnswer = {
  kind: "measured",
  found: { picture, width: 40, height: 30, warnings: [], pieces: [{ piece: square, cutOut: picture }] },
};

/** A table whose photos are measured when the test says so. */
function tableWith() {
  const asked: {
    answer: (answer: PhotoAnswer) => void;
    fail: () => void;
    signal: AbortSignal;
    printed: number;
  }[] = [];
  const corrections: FoundPiece[][] = [];
  let ids = 0;
  let bars: Preferences["bars"] = { letter: null, a4: measuredLength("149 mm", "cm") };
  const table = new PhotoTable({
    measure: ({ printed }, { signal }) =>
      new Promise((answer, failed) => {
        asked.push({ answer, fail: () => failed(new Error("broken")), signal, printed });
        signal.addEventListener("abort", () => answer(null));
      }),
    correct: () => Promise.resolve(corrections.shift() ?? []),
    newId: () => {
      ids += 1;
      return String(ids);
    },
    settings: () => newProject({ title: "", createdAt: 0 }).settings,
    addressOf: () => "blob:",
    paper: "letter",
    bars: () => bars,
    remember: (said) => {
      bars = said;
    },
  });
  return { table, asked, corrections, remembered: () => bars };
}

const file = new File([], "a.jpg");
const turn = () => new Promise((done) => setTimeout(done));
const kinds = (table: PhotoTable) => table.state().photos.map(({ kind }) => kind);

describe("the photos on the page", () => {
  it("are measured one after another, whatever becomes of one", async () => {
    const { table, asked } = tableWith();
    table.addPhotos([file, file, file, file]);
    expect(kinds(table)).toEqual(["measuring", "waiting", "waiting", "waiting"]);
    asked[0]?.answer({ kind: "refused", why: { kind: "no-cards" } });
    await turn();
    asked[1]?.fail();
    await turn();
    asked[2]?.answer(found);
    await turn();
    expect(kinds(table)).toEqual(["refused", "failed", "measured", "measuring"]);
    expect(table.state().pieces).toHaveLength(1);
  });

  it("that are stopped leave nothing behind, and the next has its turn", async () => {
    const { table, asked } = tableWith();
    table.addPhotos([file, file]);
    table.putAway(table.state().photos[0]?.id ?? "");
    await turn();
    expect(asked[0]?.signal.aborted).toBe(true);
    expect(kinds(table)).toEqual(["measuring"]);
    asked[1]?.answer(found);
    await turn();
    table.putAway(table.state().photos[0]?.id ?? "");
    expect(table.state()).toMatchObject({ photos: [], pieces: [], cloths: [] });
  });

  it("give corrections that are taken back one by one, letters of one field at once", async () => {
    const { table, asked } = tableWith();
    table.addPhotos([file]);
    asked[0]?.answer(found);
    await turn();
    const before = table.state();
    const id = before.pieces[0]?.id ?? "";
    table.edit((laid) => withTaken(laid, false), "tick");
    table.edit((laid) => withTaken(laid, true), "tick");
    table.edit((laid) => withoutPiece(laid, id));
    expect(table.state().pieces).toEqual([]);
    table.takeBack();
    expect(table.state().pieces).toEqual(before.pieces);
    table.takeBack();
    expect(table.state()).toEqual(before);
    table.takeBack();
    expect(table.state()).toEqual(before);
  });

  it("that are put away come back with all that was corrected in them, in their place", async () => {
    const { table, asked } = tableWith();
    table.addPhotos([file, file]);
    asked[0]?.answer(found);
    await turn();
    asked[1]?.answer(found);
    await turn();
    table.edit((laid) => withTaken(laid, false));
    const { photos, pieces, cloths } = table.state();
    table.putAway(photos[0]?.id ?? "");
    table.putAway(photos[1]?.id ?? "");
    expect(table.state()).toMatchObject({ photos: [], pieces: [], cloths: [], canTakeBack: true });
    table.takeBack();
    expect(table.state().photos).toEqual([photos[1]]);
    table.takeBack();
    expect(table.state()).toMatchObject({ photos, pieces, cloths });
  });

  it("that are measured again are as they were once that is taken back, before or after it has come to its end", async () => {
    const { table, asked } = tableWith();
    table.addPhotos([file, file]);
    for (const at of [0, 1]) {
      asked[at]?.answer(found);
      await turn();
    }
    const { pieces } = table.state();
    table.edit((laid) => withTaken(laid, false));
    const before = table.state();
    const again = () => {
      table.setBar(measuredLength("5 7/8", "in"));
      table.measure(new Set(before.photos.map(({ id }) => id)));
    };
    const asItWas = { photos: before.photos, pieces: before.pieces, cloths: before.cloths };

    again();
    expect(kinds(table)).toEqual(["measuring", "waiting"]);
    asked[2]?.answer(found);
    await turn();
    expect(kinds(table)).toEqual(["measured", "measuring"]);
    table.edit((laid) => withTaken(laid, false));
    table.takeBack();
    expect(table.state().pieces).toHaveLength(1);
    table.takeBack();
    expect(table.state()).toMatchObject(asItWas);
    await turn();
    expect(table.state()).toMatchObject(asItWas);

    again();
    for (const at of [4, 5]) {
      asked[at]?.answer(found);
      await turn();
    }
    expect(table.state().photos.map(({ printed }) => printed)).toEqual([5.875 / 6, 5.875 / 6]);
    table.takeBack();
    expect(table.state()).toMatchObject(asItWas);
    table.takeBack();
    expect(table.state().pieces).toEqual(pieces);
    expect(table.state().canTakeBack).toBe(false);
  });

  it("are corrected while another is measured: what is found there stays where a correction is taken back", async () => {
    const { table, asked } = tableWith();
    table.addPhotos([file, file]);
    asked[0]?.answer(found);
    await turn();
    const [first] = table.state().pieces;
    table.edit((laid) => withoutPiece(laid, first?.id ?? ""));
    asked[1]?.answer(found);
    await turn();
    const [second] = table.state().pieces;
    table.takeBack();
    expect(table.state().pieces).toEqual([first, second]);
    // No two are called by one number, of whatever photo they are.
    expect([first?.number, second?.number]).toEqual([1, 2]);
    expect(table.state().canTakeBack).toBe(false);
    const named = table.state().cloths.map(({ id }) => id);
    expect(named).toEqual([...new Set([first?.cloth, second?.cloth])]);
  });

  it("are corrected: an outline, one piece in two, one that was missed; each is taken back as one", async () => {
    const { table, asked, corrections } = tableWith();
    table.addPhotos([file]);
    asked[0]?.answer(found);
    await turn();
    const before = table.state();
    const [photo, piece] = [before.photos[0]?.id ?? "", before.pieces[0]?.id ?? ""];
    const widths = () => table.state().pieces.map(({ seen }) => seen.width);
    const one = (width: number): FoundPiece => ({ piece: { ...square, width }, cutOut: picture });
    corrections.push([one(4)], [one(1), one(2)], [one(6)], []);

    await table.correct(photo, { kind: "corners", pixels: [], snaps: "none" }, [piece]);
    expect(table.state().pieces[0]).toMatchObject({ id: piece, number: 1, width: { text: "4" } });
    await table.correct(photo, { kind: "split", pixels: [], from: [0, 0], to: [1, 1] }, [piece]);
    expect(widths()).toEqual([1, 2]);
    expect(table.state().cloths).toHaveLength(1);
    await table.correct(photo, { kind: "inside", at: [0, 0] }, []);
    expect(table.state().pieces.map(({ number }) => number)).toEqual([1, 2, 3]);
    expect(await table.correct(photo, { kind: "inside", at: [0, 0] }, [])).toBe(false);
    expect(widths()).toEqual([1, 2, 6]);
    for (const left of [[1, 2], [4], [3]]) {
      table.takeBack();
      expect(widths()).toEqual(left);
    }
    expect(table.state()).toEqual(before);
  });

  it("are measured by what the ruler said of that paper before, and says now", () => {
    const { table, remembered } = tableWith();
    const texts = () => [remembered().letter?.text ?? null, remembered().a4?.text ?? null];
    expect(table.state().bar).toBeNull();
    table.setBar(measuredLength("5 7/8", "in"));
    table.setPaper("a4");
    expect(table.state().bar?.text).toBe("149 mm");
    table.setPaper("letter");
    expect(table.state().bar?.text).toBe("5 7/8");
    expect(texts()).toEqual(["5 7/8", "149 mm"]);
    // What can't be is said on the page, and not kept.
    table.setBar(measuredLength("4", "in"));
    expect(table.state().bar?.text).toBe("4");
    expect(texts()).toEqual([null, "149 mm"]);
    table.setBar(null);
    expect(texts()).toEqual([null, "149 mm"]);
  });

  it("are measured by what the ruler says, where that can be", async () => {
    const { table, asked } = tableWith();
    table.setBar(measuredLength("5 7/8", "in"));
    table.addPhotos([file]);
    expect(asked[0]?.printed).toBeCloseTo(5.875 / 6, 9);
    const said = (text: string) => printedOf({ paper: "letter", bar: measuredLength(text, "in") });
    expect([said(""), said("5"), said("six"), said("6")]).toEqual([1, null, null, 1]);
    expect(printedOf({ paper: "a4", bar: measuredLength("150 mm", "in") })).toBe(1);
  });
});
