/**
 * Whether rectangles lie on their cloth so that a ruler and a blade can cut them out: inside it, none over another,
 * and separable by cuts from edge to edge. Written without a look at how the engine packs; a safe cut never spoils
 * another one, so the first that separates is taken.
 */
export type Rectangle = { x: number; y: number; width: number; height: number };

export function canBeCut(
  cloth: { width: number; height: number },
  rectangles: readonly Rectangle[],
): boolean {
  const inside = rectangles.every(
    (r) =>
      r.x >= 0 &&
      r.y >= 0 &&
      r.width > 0 &&
      r.height > 0 &&
      r.x + r.width <= cloth.width &&
      r.y + r.height <= cloth.height,
  );
  return inside && !overlap(rectangles) && separable(rectangles);
}

function overlap(rectangles: readonly Rectangle[]): boolean {
  return rectangles.some((a, i) =>
    rectangles
      .slice(i + 1)
      .some(
        (b) => a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height,
      ),
  );
}

function separable(rectangles: readonly Rectangle[]): boolean {
  if (rectangles.length <= 1) return true;
  for (const axis of ["x", "y"] as const) {
    const size = axis === "x" ? "width" : "height";
    for (const { [axis]: at } of rectangles) {
      const before = rectangles.filter((r) => r[axis] + r[size] <= at);
      const after = rectangles.filter((r) => r[axis] >= at);
      if (before.length === 0 || after.length === 0) continue;
      if (before.length + after.length === rectangles.length) return separable(before) && separable(after);
    }
  }
  return false;
}
