import type { ShopQuantity, ShopRow } from "@/lib/accept";
import { beadQuantityRows } from "@/lib/measure";
import { imperfections } from "@/lib/trade";
import { formatQuantity, type UnitPreferences } from "@/lib/units";
import { lengthText } from "./length-text";

/** Limits on a reading of the bead are called as the reading is. */
const readBeads = {
  convexity: beadQuantityRows.convexity.label,
  reinforcement: beadQuantityRows.reinforcement.label,
  width: beadQuantityRows.width.label,
} as const;

/** How a row of the shop's own limits is measured, as a choice names it. */
export const shopQuantityWords: Readonly<Record<ShopQuantity, string>> = {
  "none-allowed": "None allowed",
  depth: "Depth of each",
  height: "Height of each",
  diameter: "Diameter of each",
  length: "Length of each",
  "total-length": "Lengths together",
  "total-diameter": "Diameters together",
  count: "How many",
  "leg-shortfall": "Leg shorter than asked for, by",
  "leg-difference": "Difference between the legs",
  "throat-shortfall": "Throat thinner than asked for, by",
  ...readBeads,
};

/** What comes before the limit in a sentence. */
const beforeLimit: Readonly<Record<Exclude<ShopQuantity, "none-allowed">, string>> = {
  depth: "not deeper than",
  height: "not higher than",
  diameter: "not wider across than",
  length: "none longer than",
  "total-length": "together at most",
  "total-diameter": "diameters together at most",
  count: "at most",
  "leg-shortfall": "not shorter than asked for by more than",
  "leg-difference": "not apart by more than",
  "throat-shortfall": "not thinner than asked for by more than",
  convexity: "at most",
  reinforcement: "at most",
  width: "at most",
};

const beadSubjects: Readonly<Partial<Record<ShopQuantity, string>>> = {
  "leg-shortfall": "Each leg",
  "leg-difference": "Legs",
  "throat-shortfall": beadQuantityRows.throat.label,
  ...readBeads,
};

/** What of the limit a sentence needs: a row that is still being written has it too. */
export type ShopRowWords = Pick<ShopRow, "imperfections" | "quantity" | "limit" | "ofThickness" | "windowMm">;

/** A row of the shop's own limits as one sentence, in the person's units: "Undercut: not deeper than 0.5 mm." */
export function shopRowText(row: ShopRowWords, units: UnitPreferences): string {
  const names = row.imperfections.map((id) => imperfections[id].name).join(", ");
  const subject = beadSubjects[row.quantity] ?? (names || "Nothing chosen yet");
  if (row.quantity === "none-allowed") return `${subject}: none allowed.`;
  return `${subject}: ${beforeLimit[row.quantity]} ${limitText(row, units)}${windowText(row, units)}.`;
}

function limitText({ quantity, limit, ofThickness }: ShopRowWords, units: UnitPreferences): string {
  const part =
    ofThickness === null ? null : `${formatQuantity("statedShare", ofThickness, "metric")} of the thickness`;
  if (limit === null) return part ?? "… (no limit yet)";
  const most = quantity === "count" ? String(limit) : lengthText(limit, units);
  return part === null ? most : `${part}, and never more than ${most}`;
}

function windowText({ quantity, windowMm }: ShopRowWords, units: UnitPreferences): string {
  if (!["total-length", "total-diameter", "count"].includes(quantity)) return "";
  return windowMm === null ? " on the whole weld" : ` in any ${lengthText(windowMm, units)}`;
}

/** Why a field of a set does not fit, by the message of its schema; null for what no field shows. */
export function shopFieldText(message: string): string {
  return fieldSentences[message] ?? "This does not fit. Check it and save again.";
}

const fieldSentences: Readonly<Record<string, string>> = {
  "limit-needed": "Type a limit, or a part of the thickness. “None allowed” takes neither.",
  "thickness-only-for-lengths": "A part of the thickness limits sizes only, not a number of imperfections.",
  "window-only-for-totals": "A stretch counts only for numbers and sums.",
  "imperfection-needed": "Choose at least one imperfection.",
  "id-twice": "Two rows are the same row. Take one off and add it again.",
};
