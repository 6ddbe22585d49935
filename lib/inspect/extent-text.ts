import { lengthText } from "@/lib/report";
import { inch, metric } from "@/lib/units";
import type { Extent } from "./extent";
import { partOf, type WeldPart } from "./extent-standing";

/** Three figures, and never "0" for what is more than nothing: "33.3 %", "0.04 %". */
const percentText = (percent: number): string => `${Number(percent.toPrecision(3))} %`;
const bothLengths = (mm: number): string => `${lengthText(mm, metric)} (${lengthText(mm, inch)})`;

/** A part of a weld in words: "80 %, 240 mm (9.4 in)"; one alone where the other cannot be worked out. */
export const weldPartText = ({ percent, lengthMm }: WeldPart): string =>
  [percent === null ? "" : percentText(percent), lengthMm === null ? "" : bothLengths(lengthMm)]
    .filter(Boolean)
    .join(", ");

/** An extent as it was recorded, with its note: "20 % (upper end)". Empty where nothing was recorded. */
export function extentText(extent: Extent | null, note: string): string {
  if (extent === null) return note;
  // As written, not rounded: 99.96 % must not read as all.
  const text = extent.kind === "percent" ? `${extent.percent} %` : bothLengths(extent.lengthMm);
  return note === "" ? text : `${text}; ${note}`;
}

/** As `extentText`, with the millimetres that a part in percent comes to where the weld's length is known. */
export function extentWithLength(extent: Extent | null, note: string, weldLengthMm: number | null): string {
  const text = extentText(extent, note);
  if (extent?.kind !== "percent" || weldLengthMm === null) return text;
  return `${text}, that is ${bothLengths(partOf(extent, weldLengthMm).lengthMm ?? 0)}`;
}
