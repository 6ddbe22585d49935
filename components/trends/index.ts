export { GroupPanel } from "./group-panel";
export { ParetoPanel } from "./pareto-panel";
export { RejectPanel } from "./reject-panel";
export { type GroupLine, type ParetoLine, type RejectPoint } from "./trend-links";
