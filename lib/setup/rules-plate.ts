import { feedCap, thicknessLimits, type FeedCap } from "@/lib/trade";
import { finding, type SetupRule } from "./finding";
import { readingResolution } from "./rules-window";
import type { RunSetup } from "./run-setup";
import { practice } from "./sources";
import { electrodeOf } from "./window-for";

/** The cap of this input for the recorded process or the class's own, whichever has one: a contradiction hides neither. */
function inputCap(setup: RunSetup): FeedCap | null {
  const { inputPower, electrodeDiameterMm } = setup;
  if (inputPower === null || electrodeDiameterMm === null) return null;
  const processes = [setup.process, electrodeOf(setup)?.process ?? null];
  for (const process of processes) {
    const cap = process === null ? null : feedCap(inputPower, process, electrodeDiameterMm);
    if (cap !== null) return cap;
  }
  return null;
}

export const feedBeyondInput: SetupRule = (setup) => {
  const { wireFeedMPerMin } = setup;
  if (wireFeedMPerMin === null) return [];
  const cap = inputCap(setup);
  if (cap === null || wireFeedMPerMin <= cap.maxWireFeedMPerMin + readingResolution.wireFeedMPerMin)
    return [];
  const data = { value: wireFeedMPerMin, cap: cap.maxWireFeedMPerMin, inputPower: setup.inputPower ?? "" };
  return [
    finding("feed-beyond-input", "warn", ["wireFeedMPerMin", "inputPower"], { data, source: cap.source }),
  ];
};

/** The trade's point: a 6 mm T-joint that wants about 400 in/min gets about 280 from a 120 V input. */
export const PLATE_FOR_120V_MM = 6;

export const plateBeyondInput: SetupRule = (setup) => {
  const { thicknessMm } = setup;
  if (thicknessMm === null) return [];
  const cap = inputCap(setup);
  if (cap === null || thicknessMm < PLATE_FOR_120V_MM) return [];
  const data = { value: thicknessMm, cap: cap.maxWireFeedMPerMin, inputPower: setup.inputPower ?? "" };
  return [finding("plate-beyond-input", "note", ["thicknessMm", "inputPower"], { data, source: practice })];
};

export const plateAgainstWire: SetupRule = (setup) => {
  const electrode = electrodeOf(setup);
  const thicknessMm = setup.thicknessMm;
  if (electrode === null || thicknessMm === null) return [];
  return thicknessLimits(electrode, setup.electrodeDiameterMm, setup.position, setup.transfer).flatMap(
    (limit) => {
      const past = limit.kind === "floor" ? limit.mm - thicknessMm : thicknessMm - limit.mm;
      // Plate is sold to about a tenth of a millimetre; 8 mm plate is the cap of 7.94 mm.
      if (past <= 0.1) return [];
      const code = limit.kind === "floor" ? "plate-below-floor" : "plate-above-cap";
      const data = { electrode: electrode.id, value: thicknessMm, limit: limit.mm };
      return [finding(code, "warn", ["thicknessMm", "electrodeClass"], { data, source: limit.source })];
    },
  );
};
