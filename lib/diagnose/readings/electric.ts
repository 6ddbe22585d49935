import type { Source } from "@/lib/base";
import { ampsForThickness, feedCap, ownEstimate, type Polarity, type Process } from "@/lib/trade";
import type { Reader } from "../reading";
import { fact } from "./fact";
import { entered } from "./window";
import { strongest } from "../witness";

/** The pole of the gun by process, for when the class is not known. */
const usualPole: Partial<Readonly<Record<Process, { readonly pole: Polarity; readonly source: Source }>>> = {
  GMAW: { pole: "DCEP", source: strongest("apprenticeship-notes", "trade-reference-notes") },
  "FCAW-G": { pole: "DCEP", source: strongest("flux-cored-class-table") },
  GTAW: { pole: "DCEN", source: strongest("tungsten-arc-handbook", "apprenticeship-notes") },
};

/** Polarity against the class; against what is usual for the process when the class is not known. */
export const polarityReading: Reader = ({ setup, electrode }) => {
  if (setup.polarity === null) return [];
  if (electrode !== null && electrode.polarity.length > 0) {
    const right = electrode.polarity.includes(setup.polarity);
    return [
      fact({
        key: "polarity",
        odds: { polarity: right ? 0.05 : 300 },
        source: electrode.source,
        forText: "The recorded polarity is not the one of this class.",
        againstText: "The recorded polarity is the one of this class.",
      }),
    ];
  }
  const usual = setup.process === null ? undefined : usualPole[setup.process];
  if (usual === undefined) return [];
  return [
    fact({
      key: "polarity",
      odds: { polarity: setup.polarity === usual.pole ? 0.1 : 100 },
      source: usual.source,
      forText: "The recorded polarity is not the usual one of this process on steel.",
      againstText: "The recorded polarity is the usual one of this process.",
    }),
  ];
};

/** The rule of thumb for steel up to 1/4 in, against the current as recorded or computed. */
export const ampsForPlateReading: Reader = ({ setup, physics }) => {
  const amps = setup.amps ?? physics.currentA;
  const rule = setup.thicknessMm === null ? null : ampsForThickness(setup.thicknessMm);
  if (amps === null || setup.thicknessMm === null || rule === null) return [];
  const ratio = amps / rule.amps;
  if (ratio > 0.65 && ratio < 1.5) return [];
  // Computed from feed and tip to work, a low current may come of either.
  const low = setup.amps === null ? { "wfs-low": 2.5, "ctwd-long": 2.5 } : { "wfs-low": 2.5 };
  return [
    fact({
      key: "amps-for-plate",
      odds: ratio >= 1.5 ? { "wfs-high": 3, "thin-base": 2 } : low,
      source: rule.source,
      forText:
        ratio >= 1.5
          ? "The current is high for plate this thin."
          : "The current is low for plate this thick.",
      amounts: [entered("current", amps, "current"), entered("rule of thumb", rule.amps, "current")],
    }),
  ];
};

/** Small mains input, and what it caps. */
export const inputReading: Reader = ({ setup }) => {
  if (setup.inputPower === null) return [];
  const small = setup.inputPower === "120V";
  const wanted = setup.thicknessMm === null ? null : (ampsForThickness(setup.thicknessMm)?.amps ?? null);
  // The rule of thumb asks for more than such an input gives: about 150 A is the most welders get from it.
  const beyond = small && (setup.thicknessMm ?? 0) > 3 && (wanted === null || wanted > 150);
  return [
    fact({
      key: "inputPower",
      odds: { "input-power": beyond ? 20 : small ? 6 : 0.3, ...(beyond ? { "base-cold-thick": 3 } : {}) },
      source: ownEstimate,
      forText: beyond
        ? "A small mains input does not give the current that plate this thick asks for."
        : "A small mains input leaves little in reserve.",
      againstText: "This mains input is strong enough.",
    }),
  ];
};

/** Above the feed this input can hold with this wire. */
export const feedCapReading: Reader = ({ setup }) => {
  const { inputPower, process, electrodeDiameterMm, wireFeedMPerMin } = setup;
  if (inputPower === null || process === null || electrodeDiameterMm === null || wireFeedMPerMin === null)
    return [];
  const cap = feedCap(inputPower, process, electrodeDiameterMm);
  if (cap === null || wireFeedMPerMin <= cap.maxWireFeedMPerMin) return [];
  return [
    fact({
      key: "feed-cap",
      odds: { "input-power": 30 },
      source: cap.source,
      forText: "A small input cannot hold this feed.",
      amounts: [
        entered("wire feed", wireFeedMPerMin, "wire-feed"),
        entered("input gives out at about", cap.maxWireFeedMPerMin, "wire-feed"),
      ],
    }),
  ];
};

/** A rod thicker than the plate cannot be aimed into its corner. */
export const rodSizeReading: Reader = ({ setup }) => {
  if (setup.process !== "SMAW" || setup.electrodeDiameterMm === null || setup.thicknessMm === null) return [];
  const ratio = setup.electrodeDiameterMm / setup.thicknessMm;
  return [
    fact({
      key: "electrodeDiameterMm",
      odds: { "electrode-large": ratio > 1 ? 8 : ratio < 0.6 ? 0.4 : 1 },
      source: ownEstimate,
      forText: "The rod is thicker than the plate.",
      againstText: "The rod is well below the plate's thickness.",
    }),
  ];
};
