export { periodDays } from "./calendar";
export { changeSentence } from "./difference";
export { periods, type Period } from "./group";
export { pareto } from "./pareto";
export { trendSentence } from "./sentences";
export { shareOf, type Share } from "./share";
export { signalLines } from "./signal-lines";
export { shareText } from "./share-text";
export {
  trendFigures,
  type Counted,
  type FigureChart,
  type FigureGroup,
  type FigurePoint,
  type FigureRow,
  type GroupCount,
  type TrendCounts,
  type TrendFigures,
} from "./trend-figures";
