import type { Amount, Change, DiagnoseInput, Diagnosis } from "@/lib/diagnose";
import { imperfections } from "@/lib/trade";
import { MM_PER_INCH, type UnitPreferences } from "@/lib/units";
import { settableText } from "./amount-text";
import { statedLengthText } from "./length-text";

/** How many marks are named as those to look at. */
const NAMED = 2;

/**
 * What to look for after the change: the marks its cause left, and what the models expect of the bead, beside what it
 * was: "undercut less or gone; leg about 6 mm, was 4.5 mm". Empty where nothing can be said.
 */
export function expectWords(
  change: Change,
  evidence: DiagnoseInput,
  diagnosis: Diagnosis,
  units: UnitPreferences,
): string {
  const effects = change.effects.map((effect) =>
    effectText(effect, wasSi(effect, evidence, diagnosis), units),
  );
  return [marksText(change, diagnosis), ...effects].filter(Boolean).join("; ");
}

/** The marks that speak for this cause, strongest first. */
function marksText({ causeId }: Change, { causes }: Diagnosis): string {
  const why = causes.find(({ id }) => id === causeId)?.why ?? [];
  const names = why
    .filter(({ kind, direction, imperfection }) => kind === "mark" && direction === "for" && imperfection)
    .map(({ imperfection }) => imperfections[imperfection!].name.toLowerCase());
  return names.length === 0 ? "" : `${names.slice(0, NAMED).join(" and ")} less or gone`;
}

function effectText(effect: Amount, was: number | null, units: UnitPreferences): string {
  const text = (value: number) => aboutText(value, effect, units);
  const then = text(effect.valueSi);
  if (was === null) return `${effect.quantity} ${then}`;
  const before = text(was);
  return `${effect.quantity} ${then}${before === then ? "" : `, was ${before}`}`;
}

/** As a shop says an expected figure: a size to half a millimetre or a thirty-second, all else as it can be set. */
function aboutText(value: number, { unitKind }: Amount, units: UnitPreferences): string {
  if (unitKind !== "small-length" || units.length === "mm") return settableText(value, unitKind, units);
  const step = MM_PER_INCH / 32;
  return statedLengthText(Math.max(1, Math.round(value / step)) * step, units);
}

/**
 * What the same thing was on this bead: by the same model, so that the two can be compared, else as it was read; null where
 * neither.
 */
function wasSi(
  { unitKind }: Amount,
  { setup, bead }: DiagnoseInput,
  { estimates }: Diagnosis,
): number | null {
  const estimate = () => estimates.find((one) => one.unitKind === unitKind)?.valueSi ?? null;
  if (unitKind === "small-length") return estimate() ?? bead.legMm;
  if (unitKind === "current") return estimate() ?? setup.amps;
  return unitKind === "voltage" ? setup.volts : null;
}
