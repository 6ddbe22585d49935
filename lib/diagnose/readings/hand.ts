import { fieldLabel, HAND_TRAVEL, isFirstLayer, legOfPass, onePass } from "@/lib/setup";
import { type ElectrodeClass, fromMemory, isSlagProcess, ownEstimate, withoutDocument } from "@/lib/trade";
import type { Reader } from "../reading";
import { fact } from "./fact";
import { entered, gaugeReading } from "./window";
import { strongest } from "../witness";

/** Recorded, timed or inferred travel against what hands usually do; softly, because small beads are run faster. */
export const travelReading: Reader = ({ setup, physics }) =>
  setup.process === "SMAW" || setup.process === "GTAW" || physics.travelMmPerMin === null
    ? []
    : gaugeReading({
        key: "travel",
        label:
          physics.travelInferred !== null
            ? "Travel, from the bead's size"
            : fieldLabel("travelSpeedMmPerMin"),
        value: physics.travelMmPerMin,
        band: HAND_TRAVEL,
        unitKind: "travel-speed",
        high: "travel-fast",
        low: "travel-slow",
        weight: physics.travelInferred !== null ? 0.4 : 0.6,
      });

/** Measured leg against the leg asked for, or the computed one when nobody measured; of a weld that is one pass. */
export const legReading: Reader = ({ setup, bead, physics }) => {
  const leg = bead.legMm ?? physics.legMm;
  if (leg === null || setup.targetLegMm === null || !isFirstLayer(setup)) return [];
  if ((legOfPass(setup)?.passes ?? 1) > 1) return [];
  const measured = bead.legMm !== null;
  const band = { low: setup.targetLegMm, high: 1.25 * setup.targetLegMm, source: ownEstimate };
  return gaugeReading({
    key: "leg",
    label: measured ? "Leg" : "Leg, from feed and travel",
    value: leg,
    band,
    unitKind: "small-length",
    // A leg too large is travel too slow, and the other way round.
    high: "travel-slow",
    low: "travel-fast",
    weight: measured ? 1 : 0.7,
  });
};

export const passSizeReading: Reader = ({ setup, bead }) => {
  if (bead.legMm === null || !isFirstLayer(setup)) return [];
  const { mm, source } = onePass(setup);
  const ratio = bead.legMm / mm;
  return [
    fact({
      key: "pass-size",
      // A pass this big was not run too fast.
      odds:
        ratio > 1.02
          ? { "pass-too-big": 20, "travel-fast": 0.1 }
          : { "pass-too-big": ratio < 0.8 ? 0.25 : 1 },
      source,
      forText: "The leg is more than one pass carries.",
      againstText: "One pass carries this leg.",
      amounts: [
        entered("leg", bead.legMm, "small-length"),
        entered("one pass carries about", mm, "small-length"),
      ],
    }),
  ];
};

export const directionReading: Reader = ({ setup }) => {
  if (setup.travelDirection === null || setup.process === null) return [];
  const pushed = setup.travelDirection === "push";
  const dragged = setup.travelDirection === "drag";
  const slag = isSlagProcess(setup.process);
  return [
    fact({
      key: "travelDirection",
      odds: slag
        ? { "push-on-slag": pushed || dragged ? 1 : 0.5, "drag-excess": dragged ? 1 : 0.1 }
        : { "push-excess": pushed ? 1 : 0.05, "drag-excess": dragged ? 1.5 : 0.1 },
      source: strongest("welding-fundamentals", "trade-reference-notes"),
      forText: pushed ? "The gun was pushed." : "The gun was dragged.",
      againstText: pushed
        ? "The gun was pushed."
        : dragged
          ? "The gun was dragged."
          : "The gun was held square.",
    }),
  ];
};

/** Whether the class lists vertical down among its positions. */
export const madeForDownhill = (electrode: ElectrodeClass | null): boolean =>
  electrode !== null && electrode.positions.includes("vertical-down");

/** Downhill is for thin plate; above this the pool runs ahead before the root has melted. Memory. */
const DOWNHILL_PLATE_MM = 5;

/** Uphill or not vertical at all: it cannot have been welded downhill. A class made for it is not wrong on thin plate. */
export const progressionReading: Reader = ({ setup, electrode }) => {
  if (setup.position === null) return [];
  if (setup.position === "vertical" && setup.progression === null) return [];
  const down = setup.position === "vertical" && setup.progression === "down";
  const thick = (setup.thicknessMm ?? 0) > DOWNHILL_PLATE_MM;
  const suits = madeForDownhill(electrode);
  return [
    fact({
      key: "progression",
      odds: { downhill: !down ? 0.005 : !suits ? 80 : thick ? 8 : 0.2 },
      source: withoutDocument("the record itself", "seen"),
      forText: "It was welded downhill.",
      againstText: down ? "Thin plate, and a wire made for welding downhill." : "It was not welded downhill.",
    }),
  ];
};

/** A pool sags in horizontal, vertical and overhead, hardly in flat. A pad of stringers is not woven. */
export const situationReading: Reader = ({ setup }) => [
  ...(setup.position === "flat"
    ? [
        fact({
          key: "position",
          odds: { "pass-too-big": 0.5 },
          source: fromMemory,
          forText: "In flat position a pool hardly sags.",
        }),
      ]
    : []),
  ...(setup.joint === "stringer-pad"
    ? [
        fact({
          key: "joint",
          odds: { weave: 0.3 },
          source: fromMemory,
          forText: "Stringers are not woven.",
        }),
      ]
    : []),
];
