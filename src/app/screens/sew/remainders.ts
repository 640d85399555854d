import { keepOf, undyed } from "../../../engine/cloth/index.ts";
import {
  checkProject,
  type DocumentPiece,
  leftoverOf,
  type NewLeftover,
  type PlanDocument,
  type Project,
} from "../../../files/index.ts";

/**
 * What a plan leaves over as rows for the shelf. What she marked to be given away is no concern of the shelf. A plan's
 * file knows nothing of grain, washing and the kind of cloth: that is taken from her list where the piece still
 * stands in it.
 */
export function remaindersOf(plan: PlanDocument, project: Project): readonly NewLeftover[] {
  const listed = new Map(checkProject(project).job?.pieces.map((piece) => [piece.id, piece]));
  return plan.unused.flatMap(({ piece: id, count }) => {
    const piece = plan.pieces.find((one) => one.id === id);
    if (piece === undefined || piece.use === "give-away") return [];
    const own = listed.get(id);
    const isSame = own?.kind === piece.kind && own.name === piece.name;
    const facts = isSame ? { grain: own.grain, cloth: own.cloth, ...washedOf(own) } : {};
    return [leftoverOf({ ...plainFacts(piece, plan), ...present(facts), count }, plan.unit)];
  });
}

function washedOf({ washed }: { readonly washed: boolean | null }) {
  return washed === null ? {} : { washed };
}

type Facts = Parameters<typeof leftoverOf>[0];

/** Only what she would have said of it: what is usual stays unsaid. */
function plainFacts(piece: DocumentPiece, { fabrics }: PlanDocument): Facts {
  const { kind, keep, direction, name } = piece;
  const fabric = fabrics.find(({ id }) => id === piece.fabric);
  const amount = kind === "crumbs" ? { area: piece.area } : { width: piece.width, height: piece.height };
  return {
    kind,
    ...amount,
    ...(keep === keepOf(kind) ? {} : { keep }),
    ...(direction === "none" ? {} : { direction }),
    ...present({ name, fabric: fabric?.name ?? "" }),
    ...(fabric === undefined || fabric.colour === undyed ? {} : { colour: fabric.colour }),
  };
}

/** Without what is empty. */
function present<T extends object>(facts: T): Partial<T> {
  return Object.fromEntries(Object.entries(facts).filter(([, value]) => value !== "")) as Partial<T>;
}
