import { type Bough, clothIn, clothLeaf, type Fork, holds, partAt, replacedAt, type Way } from "./bough.ts";
import { type Fault, inch } from "./fault.ts";
import type { Mending } from "./moves.ts";
import { resized } from "./resize.ts";

/** How wide such cloth may be. */
const leastWidth = 2 * inch;
const widths = [2, 2.5, 3, 4].map((width) => width * inch);

/**
 * Layouts in which a strip of plain cloth lies between the two parts along the seam, where neither can be left long
 * and the strip can. What it takes is given by another part, of this fork or of one that it lies in, or by the strips
 * that lie there already.
 */
export function* spaced(fault: Fault, mending: Mending): Generator<Bough> {
  if (fault.kind !== "no giver") return;
  const { root, limits } = mending;
  const seam = fault.ways[0] ?? [];
  const way = seam.slice(0, -1);
  const index = seam.at(-1);
  const fork = partAt(root, way);
  if (fork?.kind !== "fork" || fork.holds || index === undefined) return;
  const strips = withEvenStrips(fork, index, mending);
  if (strips !== null) yield replacedAt(root, way, strips, limits.joiner);
  for (const width of widths.map((one) => Math.ceil(one / limits.step) * limits.step))
    yield* madeRoom(
      { way, fork: withStrip(fork, index, width, mending), wide: fork.beside, by: width },
      mending,
    );
}

function withStrip(fork: Fork, index: number, by: number, mending: Mending): Bough {
  const { parts } = fork;
  const strip = stripBeside(fork, index, by, mending);
  return mending.limits.joiner(fork.beside, [...parts.slice(0, index + 1), strip, ...parts.slice(index + 1)]);
}

function stripBeside(fork: Fork, index: number, by: number, { limits, cloths }: Mending): Bough {
  const spot = fork.parts[index]?.spot ?? fork.spot;
  return clothLeaf(cloths[spot] ?? limits.plain, { ...sized(fork, by), spot });
}

function sized({ beside, width, height }: Fork, by: number) {
  return beside ? { width: by, height } : { width, height: by };
}

/** With one strip more, all of one width; the first takes what the ruler leaves over. Null: they become too narrow. */
function withEvenStrips(fork: Fork, index: number, { limits }: Mending): Bough | null {
  const isStrip = (part: Bough) => clothIn(part)?.role === "spacer" && !holds(part);
  const strips = fork.parts.filter(isStrip);
  const room = strips.reduce((sum, part) => sum + (fork.beside ? part.width : part.height), 0);
  const each = Math.floor(room / (strips.length + 1) / limits.step) * limits.step;
  const fabric = strips[0] && clothIn(strips[0])?.fabric;
  if (fabric === undefined || each < leastWidth) return null;
  const first = room - strips.length * each;
  const parts = fork.parts.flatMap((part, at) => {
    const cloth = clothIn(part);
    const by = part === strips[0] ? first : each;
    const own =
      cloth !== null && isStrip(part)
        ? clothLeaf(cloth.fabric, { ...sized(fork, by), spot: part.spot })
        : part;
    return at === index ? [own, clothLeaf(fabric, { ...sized(fork, each), spot: part.spot })] : [own];
  });
  return limits.joiner(fork.beside, parts);
}

/** What lies at `way` is now larger by so much along one axis. */
type Grown = { readonly way: Way; readonly fork: Bough; readonly wide: boolean; readonly by: number };

/** A part of the same direction gives it, else all beside it grow as well and it is asked for further up. */
function* madeRoom({ way, fork, wide, by }: Grown, mending: Mending): Generator<Bough> {
  const { root, limits } = mending;
  if (fork.kind === "fork" && fork.beside === wide)
    for (const [at, part] of fork.parts.entries()) {
      const less = resized(part, wide, -by, limits);
      if (less !== null)
        yield replacedAt(root, way, limits.joiner(wide, fork.parts.with(at, less)), limits.joiner);
    }
  const outer = partAt(root, way.slice(0, -1));
  const index = way.at(-1);
  if (outer?.kind !== "fork" || outer.holds || index === undefined) return;
  const parts = outer.parts.map((part, at) =>
    at === index ? fork : outer.beside === wide ? part : resized(part, wide, by, limits),
  );
  const whole = parts.filter((part) => part !== null);
  if (whole.length === parts.length)
    yield* madeRoom({ way: way.slice(0, -1), fork: limits.joiner(outer.beside, whole), wide, by }, mending);
}
