import {
  fieldLabel,
  setupFieldNames,
  travelSpeed,
  valueInText,
  type RunSetup,
  type SetupField,
} from "@/lib/setup";
import { formatTravelSpeed, type UnitPreferences } from "@/lib/units";
import { jointWords, processWords } from "./words";

export interface LabelledRow {
  readonly label: string;
  readonly value: string;
}

type Write = (setup: RunSetup, units: UnitPreferences) => string | null;

/** Rows that say more than one field: by the field at whose place they stand, with the fields they take in. */
const joined: Partial<
  Record<SetupField, { readonly label?: string; readonly takes: readonly SetupField[]; readonly text: Write }>
> = {
  electrodeClass: { label: "Wire or rod", takes: ["electrodeDiameterMm"], text: wireText },
  gas: { takes: ["gasFlowLPerMin"], text: gasText },
  travelAngleDeg: { takes: ["travelDirection"], text: angleText },
  travelSpeedMmPerMin: { takes: [], text: speedText },
  position: { takes: ["progression"], text: positionText },
  thicknessMm: { label: "Plate", takes: ["baseMetal"], text: plateText },
};
const taken = new Set(Object.values(joined).flatMap(({ takes }) => takes));

/** How the bead was run, as rows of words. What is unknown has no row: it is not a value. */
export function setupRows(setup: RunSetup, units: UnitPreferences): readonly LabelledRow[] {
  return setupFieldNames.flatMap((field) => {
    if (taken.has(field)) return [];
    const row = joined[field];
    const value = row ? row.text(setup, units) : textOf(field, setup, units);
    return value === null ? [] : [{ label: row?.label ?? fieldLabel(field), value }];
  });
}

/** One field in words; null: not known. The process stands first in a line, so it keeps its capital. */
function textOf(field: SetupField, setup: RunSetup, units: UnitPreferences): string | null {
  const value = setup[field];
  if (value === null) return null;
  return field === "process" ? processWords[setup.process!] : valueInText(field, value, units);
}

/** "E71T-11 0.9 mm · T-joint, horizontal" */
export function setupLine(setup: RunSetup, units: UnitPreferences): string {
  const place = [setup.joint && jointWords[setup.joint], positionText(setup, units)]
    .filter(Boolean)
    .join(", ");
  const line = [wireText(setup, units) ?? (setup.process && processWords[setup.process]), place].filter(
    Boolean,
  );
  return line.length === 0 ? "Set-up not recorded" : line.join(" · ");
}

/** Several fields as one text; null when none is known. */
const together = (parts: readonly (string | null)[], between: string): string | null =>
  parts.filter(Boolean).join(between) || null;

function wireText(setup: RunSetup, units: UnitPreferences): string | null {
  return together([setup.electrodeClass, textOf("electrodeDiameterMm", setup, units)], " ");
}

function gasText(setup: RunSetup, units: UnitPreferences): string | null {
  if (setup.gas === null || setup.gas === "none") return textOf("gas", setup, units);
  return together([textOf("gas", setup, units), textOf("gasFlowLPerMin", setup, units)], ", ");
}

function angleText(setup: RunSetup, units: UnitPreferences): string | null {
  return together([textOf("travelDirection", setup, units), textOf("travelAngleDeg", setup, units)], " ");
}

function speedText(setup: RunSetup, units: UnitPreferences): string | null {
  const speed = travelSpeed(setup);
  if (speed === null) return null;
  const text = formatTravelSpeed(speed.mmPerMin, units.travel);
  return speed.from === "recorded" ? text : `${text} (from length and time)`;
}

function positionText(setup: RunSetup, units: UnitPreferences): string | null {
  if (setup.position === null) return null;
  const way = setup.position === "vertical" ? textOf("progression", setup, units) : null;
  return together([textOf("position", setup, units), way], " ");
}

function plateText(setup: RunSetup, units: UnitPreferences): string | null {
  return together([textOf("baseMetal", setup, units), textOf("thicknessMm", setup, units)], ", ");
}
