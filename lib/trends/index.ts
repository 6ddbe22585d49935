export { calendarMonth, isoWeek, periodDays } from "./calendar";
export { compareRejects, shareDifference, type ShareDifference } from "./compare";
export { groupBy, groupByPeriod, groupKeys, periods, type Group, type GroupKey, type Period } from "./group";
export { type TrendIssue, type TrendIssueCode } from "./issue";
export { type BeadObservation } from "./observation";
export {
  causeTallies,
  imperfectionTallies,
  pareto,
  type Pareto,
  type ParetoOptions,
  type ParetoRow,
  type Tally,
} from "./pareto";
export { pChart, pChartSource, type PChart, type PChartPoint, type Sample } from "./p-chart";
export { rejectChart } from "./reject-chart";
export { rejectRate, type RejectRate } from "./reject-rate";
export { trendSentence, trendSentences } from "./sentences";
export { CONFIDENCE, shareMethods, shareOf, type Share, type ShareMethod } from "./share";
export { signalRules, signalSource, usualRules, type Signal, type SignalRule } from "./signals";
export { percent, shareText } from "./share-text";
export { trendReport, type TrendGroup, type TrendReport, type TrendReportOptions } from "./trend-report";
