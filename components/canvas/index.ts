export { BeadCanvas } from "./bead-canvas-client";
export { BudgetList } from "./budget-list";
export { gaugeLabel, ShopGaugesProvider, useGauges, type Gauge } from "./gauges";
export { MarkCard } from "./mark-card";
export { MarkList } from "./mark-list";
export { newMarkId } from "@/components/canvas-kit";
export { scaleFromPicks, sizesAsked } from "./scale-from-picks";
export { type ScalePickKind } from "./scale-picks";
export { markTools, sectionMarkTools, sectionTools, type SectionWork, type Tool } from "./types";
