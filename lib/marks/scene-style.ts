import type { Imperfection } from "@/lib/trade";
import type { Stroke } from "./scene-types";

export type MarkGroup = Imperfection["group"];

export interface GroupStyle {
  readonly name: string;
  readonly stroke: Stroke;
}

/**
 * Six groups, told apart by dash as well as by ink, so that no one needs the colour. Cracks are the widest and unbroken, because they weigh
 * most; pores are dotted, because the edge of a pore must stay visible between the dots to be measured.
 */
export const groupStyles: Readonly<Record<MarkGroup, GroupStyle>> = {
  gas: { name: "Gas", stroke: { ink: "gas", width: 2.5, dash: [0.5, 4.5] } },
  shape: { name: "Profile", stroke: { ink: "shape", width: 2.5, dash: [14, 6] } },
  fusion: { name: "Fusion", stroke: { ink: "fusion", width: 3, dash: [12, 5, 1, 5] } },
  crack: { name: "Crack", stroke: { ink: "crack", width: 4, dash: [] } },
  slag: { name: "Slag", stroke: { ink: "slag", width: 2.5, dash: [6, 5] } },
  surface: { name: "Surface", stroke: { ink: "surface", width: 3, dash: [1, 5, 1, 5, 9, 5] } },
};

export const scaleStroke: Stroke = { ink: "guide", width: 2.5, dash: [] };
export const weldLineStroke: Stroke = { ink: "guide", width: 1.5, dash: [16, 4, 2, 4] };
