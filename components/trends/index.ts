export { ParetoChart } from "./pareto-chart";
export { RejectChart } from "./reject-chart";
export { type GroupLine, type ParetoLine, type RejectPoint } from "./trend-links";
export { GroupTable, ParetoTable, RejectTable } from "./trend-tables";
