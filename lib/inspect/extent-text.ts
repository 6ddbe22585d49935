import type { Extent } from "./extent";
import { lengthIn, type PaperUnits } from "./paper-units";
import { partOf, type WeldPart } from "./extent-standing";

/** Three figures, and never "0" for what is more than nothing: "33.3 %", "0.04 %". */
const percentText = (percent: number): string => `${Number(percent.toPrecision(3))} %`;
const bothLengths = (mm: number): string => lengthIn("both", mm);

/** A part of a weld in words: "80 %, 240 mm (9.4 in)"; one alone where the other cannot be worked out. */
export const weldPartText = ({ percent, lengthMm }: WeldPart): string =>
  [percent === null ? "" : percentText(percent), lengthMm === null ? "" : bothLengths(lengthMm)]
    .filter(Boolean)
    .join(", ");

/**
 * An extent as it was recorded, with the millimetres that a part in percent comes to where the weld's length is known,
 * and its note: "20 %, that is 60 mm (2.362 in); the upper end". Empty where nothing was recorded.
 */
export function extentText(
  extent: Extent | null,
  note = "",
  weldLengthMm: number | null = null,
  units: PaperUnits = "both",
): string {
  if (extent === null) return note;
  const mm = extent.kind === "percent" ? partOf(extent, weldLengthMm).lengthMm : null;
  // As written, not rounded: 99.96 % must not read as all.
  const text = extent.kind === "percent" ? `${extent.percent} %` : lengthIn(units, extent.lengthMm);
  const inMm = mm === null || mm === 0 ? "" : `, that is ${lengthIn(units, mm)}`;
  return `${text}${inMm}${note === "" ? "" : `; ${note}`}`;
}
