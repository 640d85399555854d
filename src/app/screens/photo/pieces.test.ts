import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { inches } from "../../../engine/length/index.ts";
import { measuredLength, newProject, pieceOf } from "../../../files/index.ts";
import type { MeasuredPiece, PhotoKind } from "../../../photo/index.ts";
import {
  type Laid,
  nothingLaid,
  rowsOf,
  withChange,
  withFold,
  withFound,
  withFoundAgain,
  withName,
  withOwnCloth,
  withTaken,
} from "./pieces.ts";

const teal = { l: 50, a: -25, b: -5 };
const rust = { l: 45, a: 35, b: 40 };

function seen(
  kind: PhotoKind,
  size: readonly [number, number],
  more: Partial<MeasuredPiece> = {},
): MeasuredPiece {
  const [width, height] = size;
  const measured = { width: width + 0.05, height: height + 0.05 };
  const colours = [{ lab: teal, share: 1 }];
  return { kind, width, height, measured, pixels: [], colours, busyness: 2, check: [], ...more };
}

function laidOut(...pieces: readonly MeasuredPiece[]): Laid {
  let count = 0;
  const newId = () => {
    count += 1;
    return `id${count}`;
  };
  const shown = pieces.map((piece) => ({ piece, cutOut: "" }));
  return withFound(nothingLaid, { photo: "photo", unit: "in", pieces: shown, newId });
}

const project = newProject({ title: "", createdAt: 0 });
const entering = {
  unit: "in",
  nameOf: ({ name, number }: { name: string; number: number }) => name || `cloth ${number}`,
  project,
} as const;
const idOf = (laid: Laid, at: number) => laid.pieces[at]?.id ?? "";

describe("pieces from a photo", () => {
  it("lie by their cloth, and those that are doubted are not ticked", () => {
    const laid = laidOut(
      seen("square", [3, 3]),
      seen("strip", [2.5, 11], { colours: [{ lab: rust, share: 1 }] }),
      seen("square", [4, 4], { check: ["may-be-two"] }),
      seen("square", [5, 5], { check: ["one-sheet"] }),
    );
    expect(laid.cloths).toHaveLength(2);
    const [first, strip, doubted, rough] = laid.pieces;
    expect([doubted?.cloth, rough?.cloth]).toEqual([first?.cloth, first?.cloth]);
    expect(strip?.cloth).not.toBe(first?.cloth);
    expect(laid.pieces.map(({ isTaken }) => isTaken)).toEqual([true, true, false, true]);
  });

  it("enter as one row where kind, size and cloth are alike", () => {
    const laid = laidOut(seen("square", [3, 3]), seen("square", [3, 3]), seen("rectangle", [3, 3.5]));
    const named = withName(laid, laid.cloths[0]?.id ?? "", " sea glass ");
    const [squares, rectangle, ...others] = rowsOf(withChange(named, idOf(named, 1), { count: "4" }), {
      ...entering,
      nameOf: ({ name }) => name.trim(),
    });
    expect(others).toEqual([]);
    expect(squares).toMatchObject({ count: 5, pieces: [idOf(named, 0), idOf(named, 1)] });
    expect(pieceOf(squares?.row ?? { line: "", cells: {}, others: {} }, 1)).toMatchObject({
      kind: "square",
      width: inches(3),
      count: 5,
      fabric: "sea glass",
    });
    expect(rectangle?.row.cells).toMatchObject({ height: { text: "3 1/2" }, count: { text: "1" } });
  });

  it("never enter unticked, without a size, or with a count that is none", () => {
    const laid = laidOut(seen("square", [3, 3]), seen("odd", [0, 2]), seen("square", [5, 5]));
    expect(rowsOf(withTaken(laid, false), entering)).toEqual([]);
    expect(rowsOf(withTaken(laid, true), entering)).toHaveLength(2);
    const third = idOf(laid, 2);
    for (const count of ["", "0", "2.5", "many"])
      expect(rowsOf(withChange(laid, third, { count }), entering)).toHaveLength(1);
    expect(rowsOf(withChange(laid, third, { width: measuredLength("wide", "in") }), entering)).toHaveLength(
      1,
    );
  });

  it("are found anew once the floor is chosen again, but for those that are in the heap", () => {
    const square = (x: number): Pick<MeasuredPiece, "pixels"> => ({
      pixels: [
        [x, 0],
        [x + 9, 0],
        [x + 9, 9],
        [x, 9],
      ],
    });
    const laid = laidOut(seen("square", [3, 3], square(0)), seen("square", [4, 4], square(20)));
    const [entered, old] = laid.pieces;
    const shown = [0, 20, 40].map((x) => ({ piece: seen("square", [3, 3], square(x)), cutOut: "" }));
    let count = 10;
    const newId = () => {
      count += 1;
      return `id${count}`;
    };
    const again = withFoundAgain(laid, [old?.id ?? ""], { photo: "photo", unit: "in", pieces: shown, newId });
    expect(again.pieces.map(({ id }) => id === entered?.id)).toEqual([true, false, false]);
    expect(again.pieces.map(({ number }) => number)).toEqual([1, 2, 3]);
    expect(again.pieces.map(({ seen: { pixels } }) => pixels[0]?.[0])).toEqual([0, 20, 40]);
  });

  it("folded in half are twice as long, and back", () => {
    const laid = laidOut(seen("strip", [2.5, 11.25]));
    const folded = withFold(laid, idOf(laid, 0), true);
    expect(folded.pieces[0]).toMatchObject({
      width: { value: inches(5, 2) },
      height: { value: inches(45, 2) },
    });
    expect(withFold(folded, idOf(laid, 0), false)).toEqual(laid);
  });

  it("of a fabric that has a color in the heap keep that one", () => {
    const laid = laidOut(seen("square", [3, 3]));
    const there = {
      id: "a",
      line: "",
      others: {},
      cells: { fabric: { text: "Cloth  1", value: "Cloth 1" }, colour: { text: "red", value: "red" } },
    };
    const [row] = rowsOf(laid, { ...entering, project: { leftovers: [there] } });
    expect(row?.row.cells.colour).toBeUndefined();
    expect(rowsOf(laid, entering)[0]?.row.cells.colour?.text).toMatch(/^#[0-9a-f]{6}$/);
  });

  it("are counted once each, however they are joined", () => {
    const size = fc.constantFrom(2.5, 3, 3.5);
    const piece = fc.tuple(size, size, fc.constantFrom(teal, rust));
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 20 }), (all) => {
        const laid = laidOut(
          ...all.map(([width, height, lab]) =>
            seen("rectangle", [width, height], { colours: [{ lab, share: 1 }] }),
          ),
        );
        const rows = rowsOf(laid, entering);
        expect(rows.flatMap(({ pieces }) => pieces).toSorted()).toEqual(
          laid.pieces.map(({ id }) => id).toSorted(),
        );
        expect(rows.reduce((sum, { count }) => sum + count, 0)).toBe(all.length);
      }),
    );
  });

  it("can be of a cloth of their own", () => {
    const laid = laidOut(seen("square", [3, 3]), seen("square", [3, 3]));
    const apart = withOwnCloth(laid, idOf(laid, 1), "own");
    expect(apart.cloths.map(({ number }) => number)).toEqual([1, 2]);
    expect(rowsOf(apart, entering)).toHaveLength(2);
  });
});
