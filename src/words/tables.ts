/** All that the app says, as a language has to give it. Types alone: nothing is fetched for them. */
import type { AdviceTexts } from "./appAdvice.ts";
import type { HandTexts } from "./appByHand.ts";
import type { ComparisonTexts } from "./appComparison.ts";
import type { DrawingTexts } from "./appDrawing.ts";
import type { FrameWords } from "./appFrame.ts";
import type { LeftoversTexts } from "./appLeftovers.ts";
import type { PhotoTexts } from "./appPhoto.ts";
import type { PlanTexts } from "./appPlan.ts";
import type { ProjectsTexts } from "./appProjects.ts";
import type { SettingsTexts } from "./appSettings.ts";
import type { SewTexts } from "./appSew.ts";
import type { ShelfTexts } from "./appShelf.ts";
import type { SittingTexts } from "./appSitting.ts";
import type { SizeTexts } from "./appSize.ts";
import type { TakeAwayTexts } from "./appTakeAway.ts";
import type { TopPhotoTexts } from "./appTopPhoto.ts";
import type { ViewTexts } from "./appViews.ts";
import type { CardsWords } from "./cards.ts";
import type { TableName } from "./fetched.ts";
import type { PhotoWords } from "./photo.ts";
import type { TradeWords } from "./trade.ts";
import type { Voice } from "./voice.ts";

type TextsOf = {
  readonly advice: AdviceTexts;
  readonly cards: CardsWords;
  readonly comparison: ComparisonTexts;
  readonly drawing: DrawingTexts;
  readonly hand: HandTexts;
  readonly leftovers: LeftoversTexts;
  readonly photo: PhotoTexts;
  readonly photoFound: PhotoWords;
  readonly plan: PlanTexts;
  readonly projects: ProjectsTexts;
  readonly settings: SettingsTexts;
  readonly sew: SewTexts;
  readonly shelf: ShelfTexts;
  readonly sitting: SittingTexts;
  readonly size: SizeTexts;
  readonly takeAway: TakeAwayTexts;
  readonly topPhoto: TopPhotoTexts;
  readonly views: ViewTexts;
};

/** Each table as it is said with one unit. */
export type Tables = { readonly [N in TableName]: (voice: Voice) => TextsOf[N] } & {
  readonly frame: FrameWords;
  readonly trade: TradeWords;
};
