import { travelSpeed, type RunSetup } from "@/lib/setup";
import {
  formatAmps,
  formatAngle,
  formatDuration,
  formatFlow,
  formatThickness,
  formatTravelSpeed,
  formatVolts,
  formatWireDiameter,
  formatWireFeed,
  lengthSystem,
  type UnitPreferences,
} from "@/lib/units";
import { lengthText, statedLengthText } from "./length-text";
import {
  baseMetalWords,
  gasWords,
  inputPowerWords,
  jointWords,
  polarityWords,
  positionWords,
  processWords,
  progressionWords,
  surfaceWords,
  transferWords,
} from "./words";

export interface LabelledRow {
  readonly label: string;
  readonly value: string;
}

/** How the bead was run, as rows of words. What is unknown has no row: it is not a value. */
export function setupRows(setup: RunSetup, units: UnitPreferences): readonly LabelledRow[] {
  const rows: (readonly [string, string | null])[] = [
    ["Process", setup.process && processWords[setup.process]],
    ["Transfer", setup.transfer && transferWords[setup.transfer]],
    ["Wire or rod", wireText(setup, units)],
    ["Polarity", setup.polarity && polarityWords[setup.polarity]],
    ["Gas", gasText(setup, units)],
    [
      "Wire feed",
      setup.wireFeedMPerMin === null ? null : formatWireFeed(setup.wireFeedMPerMin, units.wireFeed),
    ],
    ["Volts", setup.volts === null ? null : formatVolts(setup.volts)],
    ["Amps", setup.amps === null ? null : formatAmps(setup.amps)],
    ["Tip to work", setup.ctwdMm === null ? null : statedLengthText(setup.ctwdMm, units)],
    ["Travel angle", angleText(setup)],
    ["Work angle", setup.workAngleDeg === null ? null : formatAngle(setup.workAngleDeg)],
    ["Travel speed", speedText(setup, units)],
    ["Length", setup.weldLengthMm === null ? null : statedLengthText(setup.weldLengthMm, units)],
    ["Arc time", setup.arcTimeS === null ? null : formatDuration(setup.arcTimeS)],
    ["Joint", setup.joint && jointWords[setup.joint]],
    ["Position", positionText(setup)],
    ["Plate", plateText(setup, units)],
    ["Gap", setup.fitUpGapMm === null ? null : lengthText(setup.fitUpGapMm, units)],
    ["Surface", setup.surface && surfaceWords[setup.surface]],
    ["Leg asked for", setup.targetLegMm === null ? null : statedLengthText(setup.targetLegMm, units)],
    ["Layer", setup.passCount === null ? null : String(setup.passCount)],
    ["Input power", setup.inputPower && inputPowerWords[setup.inputPower]],
    ["Where", setup.outdoors === null ? null : setup.outdoors ? "outdoors" : "indoors"],
  ];
  return rows.flatMap(([label, value]) => (value === null || value === "" ? [] : [{ label, value }]));
}

/** "E71T-11 0.9 mm · T-joint, horizontal" */
export function setupLine(setup: RunSetup, units: UnitPreferences): string {
  const place = [setup.joint && jointWords[setup.joint], positionText(setup)].filter(Boolean).join(", ");
  const line = [wireText(setup, units) ?? (setup.process && processWords[setup.process]), place].filter(
    Boolean,
  );
  return line.length === 0 ? "Set-up not recorded" : line.join(" · ");
}

function wireText(setup: RunSetup, units: UnitPreferences): string | null {
  const size =
    setup.electrodeDiameterMm === null
      ? null
      : formatWireDiameter(setup.electrodeDiameterMm, lengthSystem(units.length));
  return [setup.electrodeClass, size].filter(Boolean).join(" ") || null;
}

function gasText(setup: RunSetup, units: UnitPreferences): string | null {
  if (setup.gas === null) return null;
  if (setup.gas === "none") return "none";
  return [
    gasWords[setup.gas],
    setup.gasFlowLPerMin === null ? null : formatFlow(setup.gasFlowLPerMin, units.flow),
  ]
    .filter(Boolean)
    .join(", ");
}

function angleText(setup: RunSetup): string | null {
  const angle = setup.travelAngleDeg === null ? null : formatAngle(setup.travelAngleDeg);
  return [setup.travelDirection, angle].filter(Boolean).join(" ") || null;
}

function speedText(setup: RunSetup, units: UnitPreferences): string | null {
  const speed = travelSpeed(setup);
  if (speed === null) return null;
  const text = formatTravelSpeed(speed.mmPerMin, units.travel);
  return speed.from === "recorded" ? text : `${text} (from length and time)`;
}

function positionText(setup: RunSetup): string | null {
  if (setup.position === null) return null;
  const way =
    setup.position === "vertical" && setup.progression ? ` ${progressionWords[setup.progression]}` : "";
  return positionWords[setup.position] + way;
}

function plateText(setup: RunSetup, units: UnitPreferences): string | null {
  const thickness =
    setup.thicknessMm === null ? null : formatThickness(setup.thicknessMm, lengthSystem(units.length));
  return [setup.baseMetal && baseMetalWords[setup.baseMetal], thickness].filter(Boolean).join(", ") || null;
}
