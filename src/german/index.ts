/** German, all of it: a page left out, or a text of a page, does not pass the compiler. */
import type { Tables } from "../words/index.ts";
import { advice } from "./adviceTexts.ts";
import { hand } from "./byHand.ts";
import { cards } from "./cards.ts";
import { comparison } from "./comparison.ts";
import { drawing } from "./drawing.ts";
import { frame } from "./frame.ts";
import { leftovers } from "./leftovers.ts";
import { photoFound } from "./photo.ts";
import { photoPage } from "./photoPage.ts";
import { planPage } from "./planPage.ts";
import { projects } from "./projects.ts";
import { settings } from "./settings.ts";
import { sew } from "./sew.ts";
import { shelf } from "./shelf.ts";
import { sitting } from "./sitting.ts";
import { size } from "./size.ts";
import { takeAway } from "./takeAway.ts";
import { topPhoto } from "./topPhoto.ts";
import { trade } from "./trade.ts";
import { views } from "./views.ts";

export const german: Tables = {
  advice,
  cards,
  comparison,
  drawing,
  frame,
  hand,
  leftovers,
  photo: photoPage,
  photoFound,
  plan: planPage,
  projects,
  settings,
  sew,
  shelf,
  sitting,
  size,
  takeAway,
  topPhoto,
  trade,
  views,
};
