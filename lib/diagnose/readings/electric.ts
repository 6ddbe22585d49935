import { ampsForThickness, feedCap } from "@/lib/trade";
import { ownEstimate } from "../cite";
import type { Reader } from "../reading";
import { fact } from "./fact";
import { entered } from "./window";

/** Polarity against the class; nothing without a class. */
export const polarityReading: Reader = ({ setup, electrode }) => {
  if (setup.polarity === null || electrode === null || electrode.polarity.length === 0) return [];
  const right = electrode.polarity.includes(setup.polarity);
  return [
    fact({
      key: "polarity",
      label: "Polarity",
      odds: { polarity: right ? 0.05 : 300 },
      source: electrode.source,
      forText: "The recorded polarity is not the one of this class.",
      againstText: "The recorded polarity is the one of this class.",
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
  return [
    fact({
      key: "amps-for-plate",
      label: "Current for this plate",
      odds: ratio >= 1.5 ? { "wfs-high": 3, "thin-base": 2 } : { "wfs-low": 2.5 },
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
  const odds = setup.inputPower === "120V" ? 6 : 0.3;
  return [
    fact({
      key: "inputPower",
      label: "Mains input",
      odds: { "input-power": odds },
      source: ownEstimate,
      forText: "A small mains input leaves little in reserve.",
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
      label: "Feed beyond the input",
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
      label: "Rod against plate",
      odds: { "electrode-large": ratio > 1 ? 8 : ratio < 0.6 ? 0.4 : 1 },
      source: ownEstimate,
      forText: "The rod is thicker than the plate.",
      againstText: "The rod is well below the plate's thickness.",
    }),
  ];
};
