import { expect, test } from "vitest";
import { drawPlainBack } from "../../../engine/drawing/index.ts";
import { centimetres, inches } from "../../../engine/length/index.ts";
import { boxOnPage, looks, pageFor } from "./page.ts";

const back = { width: inches(68), height: inches(88) };
const of = { seam: inches(1, 4), plainSeam: inches(1, 2), fabric: null } as const;
const drawing = drawPlainBack({ ...of, unit: "in", back, top: { width: inches(60), height: inches(80) } });
if (drawing === null) throw new Error("a back of this size can be drawn");

test.each(looks)("%s: as wide to its height as in life, the top where it lies", (look) => {
  const { marks, ratio, top } = pageFor(drawing, look);
  expect(ratio).toBeCloseTo(68 / 88, 6);
  expect(marks.width / marks.height).toBeCloseTo(ratio, 2);
  expect((top?.x ?? 0) / marks.width).toBeCloseTo(4 / 68, 3);
  expect(top).toEqual(
    boxOnPage({ x: inches(4), y: inches(4), width: inches(60), height: inches(80) }, drawing, look),
  );
});

test("the ruler is a foot of 68 in, with a mark for each inch", () => {
  const { ruler } = pageFor(drawing, "large");
  expect(ruler.share).toBeCloseTo(12 / 68, 6);
  expect(ruler.ticks).toHaveLength(13);
  expect(ruler.ticks.flatMap(({ at, long }) => (long ? [at] : []))).toEqual([0, 0.5, 1]);
});

test("in centimetres it is 30 cm, with a mark for every five", () => {
  const metric = drawPlainBack({
    ...of,
    unit: "cm",
    back: { width: centimetres(170), height: centimetres(220) },
    top: null,
  });
  const page = metric && pageFor(metric, "small");
  expect(page?.ruler.share).toBeCloseTo(30 / 170, 6);
  expect(page?.ruler.ticks).toHaveLength(7);
  expect(page?.top).toBeNull();
});
