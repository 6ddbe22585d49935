import { commonPractice, feedCap, type FeedCap } from "@/lib/trade";
import { finding, type SetupRule } from "./finding";
import { readingResolution } from "./rules-window";
import type { RunSetup } from "./run-setup";
import { electrodeOf } from "./window-for";

/** The cap of this input for the recorded process or the class's own, whichever has one: a contradiction hides neither. */
export function inputCap(setup: RunSetup): FeedCap | null {
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
  const { thicknessMm, inputPower } = setup;
  if (thicknessMm === null || inputPower !== "120V" || thicknessMm < PLATE_FOR_120V_MM) return [];
  const data = { value: thicknessMm, inputPower };
  return [
    finding("plate-beyond-input", "note", ["thicknessMm", "inputPower"], { data, source: commonPractice }),
  ];
};
