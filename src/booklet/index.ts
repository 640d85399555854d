export { type CardsRequest, cardsPdf } from "./cards.ts";
