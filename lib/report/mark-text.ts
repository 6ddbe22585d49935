import { countAbout, scaleWords, type Mark, type Scale } from "@/lib/marks";
import type { MeasuredMark, Quantity } from "@/lib/measure";
import { imperfections } from "@/lib/trade";
import { formatQuantity, lengthSystem, type UnitPreferences } from "@/lib/units";
import { markSizeText, statedLengthText } from "./length-text";
import { patternWords, placeWords, stretchWords } from "./words";

export function markName(mark: Mark): string {
  return imperfections[mark.imperfection].name;
}

/** Where it lies and how: "upper toe, along the run, on and off". */
export function markPlace(mark: Mark): string {
  return [
    mark.place && placeWords[mark.place],
    mark.stretch && stretchWords[mark.stretch],
    ...mark.patterns.map((pattern) => patternWords[pattern]),
  ]
    .filter(Boolean)
    .join(", ");
}

function areaText(area: Quantity, units: UnitPreferences): string {
  return formatQuantity("area", area.value, lengthSystem(units.length), area.expandedUncertainty);
}

function quantityText(name: string, quantity: Quantity | null, units: UnitPreferences): string {
  if (quantity === null) return "";
  const size = markSizeText(quantity.value, units, quantity.expandedUncertainty);
  return [name, size, quantity.source === "gauge" ? "(gauge)" : ""].filter(Boolean).join(" ");
}

/** A long outline has no diameter worth stating, although a circle of its area could be worked out. */
function isRound({ lengthMm, diameterMm }: MeasuredMark): boolean {
  return diameterMm !== null && (lengthMm === null || lengthMm.value < 1.6 * diameterMm.value);
}

/**
 * The sizes of a mark in one line; "no scale" when the photo has none and no gauge has been used, never pixels.
 * Empty for a bare spot, which has no size to state.
 */
export function sizeText(measured: MeasuredMark | null, units: UnitPreferences): string {
  if (measured === null) return "";
  const parts = [
    quantityText("", measured.lengthMm, units),
    isRound(measured) ? quantityText("⌀", measured.diameterMm, units) : "",
    quantityText("deep", measured.depthMm, units),
    quantityText("high", measured.heightMm, units),
    measured.areaMm2 ? areaText(measured.areaMm2, units) : "",
  ].filter(Boolean);
  if (parts.length > 0) return parts.join(", ");
  return measured.issues.some((issue) => issue.code === "no-scale") ? "no scale" : "";
}

/** "about 20 by eye"; empty where nobody said how many. */
function countText(mark: Mark): string {
  const about = countAbout(mark);
  return about === null ? "" : `about ${about} by eye`;
}

/** How many and how large: "about 20 by eye; patch 12.4 ± 0.6 mm". Sizes of a patch are none of what lies in it. */
export function markAmountText(mark: Mark, measured: MeasuredMark | null, units: UnitPreferences): string {
  const size = sizeText(measured, units);
  const count = countText(mark);
  if (count === "" || size === "") return count || size;
  return `${count}; ${size === "no scale" ? size : `patch ${size}`}`;
}

/** The words at a mark on the photo, on screen and on paper alike: "Surface porosity, about 20, 12.4 mm". */
export function markLabel(mark: Mark, measured: MeasuredMark | null, units: UnitPreferences): string {
  const size = measured?.lengthMm ?? measured?.diameterMm ?? null;
  const about = countAbout(mark);
  const words = size ? markSizeText(size.value, units, size.expandedUncertainty) : "";
  return about === null
    ? [markName(mark), words].filter(Boolean).join(" ")
    : [markName(mark), `about ${about}`, words].filter(Boolean).join(", ");
}

/** The words at the scale on the photo. */
export function scaleText(scale: Scale | null, units: UnitPreferences): string {
  if (scale === null) return "";
  return scale.kind === "two-points" ? statedLengthText(scale.lengthMm, units) : scaleWords(scale);
}
