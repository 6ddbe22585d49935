export { periodDays } from "./calendar";
export { periods, type Period } from "./group";
export { pareto, type ParetoRow } from "./pareto";
export { type PChart, type PChartPoint } from "./p-chart";
export { trendSentence } from "./sentences";
export { shareOf, type Share } from "./share";
export { signalLines } from "./signal-lines";
export { shareText } from "./share-text";
export { trendReport, type TrendGroup, type TrendReport } from "./trend-report";
