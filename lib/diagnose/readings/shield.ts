import type { RunSetup } from "@/lib/setup";
import { isGasShielded, ownEstimate } from "@/lib/trade";
import type { Reader } from "../reading";
import { fact } from "./fact";
import { strongest } from "../witness";

/** No gas on a process that needs it, or not the gas of the class. */
export const gasReading: Reader = ({ setup, electrode }) => {
  if (setup.process === null || !isGasShielded(setup.process)) return [];
  if (setup.gas === "none" || setup.gasFlowLPerMin === 0) {
    return [
      fact({
        key: "gas",
        odds: { "gas-low": 300 },
        source: electrode?.source ?? ownEstimate,
        forText: "No gas flows by the record, on a process that needs it.",
      }),
    ];
  }
  if (setup.gas === null || electrode === null || electrode.gases.length === 0) return [];
  const right = electrode.gases.includes(setup.gas);
  // A gas the class is made for clears nothing where it cannot give the transfer that was set.
  if (right && cannotSpray(setup)) return [];
  return [
    fact({
      key: "gas",
      odds: { "gas-wrong": right ? 0.1 : 60 },
      source: electrode.source,
      forText: "The recorded gas is not one of this class.",
      againstText: "The recorded gas is one of this class.",
    }),
  ];
};

function cannotSpray({ transfer, gas }: RunSetup): boolean {
  return transfer === "spray" && (gas === "CO2" || gas === "75Ar-25CO2");
}

/** Spray needs about 80 % argon. */
export const sprayGasReading: Reader = ({ setup }) => {
  if (setup.process !== "GMAW" || !cannotSpray(setup)) return [];
  return [
    fact({
      key: "spray-gas",
      odds: { "gas-wrong": 30 },
      source: strongest("apprenticeship-notes"),
      forText: "This gas does not spray.",
    }),
  ];
};

export const outdoorsReading: Reader = ({ setup }) =>
  setup.outdoors === null
    ? []
    : [
        fact({
          key: "outdoors",
          odds: {
            draft: setup.outdoors ? 5 : 0.6,
            "damp-consumable": setup.outdoors ? 2 : 1,
            "moisture-plate": setup.outdoors ? 2 : 1,
          },
          source: ownEstimate,
          forText: "Outdoors there is wind and damp.",
          againstText: "It was welded indoors.",
        }),
      ];
