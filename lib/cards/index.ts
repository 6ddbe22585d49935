export { cardCodes, CardSchema, type Card, type CardCode, type CardRange } from "./card";
export { heatOfCard } from "./heat";
export { hasRows, proposeRanges } from "./propose";
export { essentials } from "./tables/essential";
export { notSaid, offCard, otherThanCard } from "./watch";
