import { differenceQuantity, statedQuantity, type Quantity } from "@/lib/measure";
import { missing, type CaseContext } from "./case-context";
import type { BeadFigure } from "./rule";
import type { BeadReadings } from "./types";
import type { MissingReading } from "./verdict";

export interface FigureOfBead {
  readonly quantity: Quantity | null;
  readonly used: readonly (keyof BeadReadings)[];
  readonly missing: readonly MissingReading[];
}

type LegFigure = "leg-shortfall" | "leg-least" | "leg-greatest" | "leg-difference";

const plain = {
  convexity: ["convexity", "convexity"],
  reinforcement: ["reinforcement", "reinforcement"],
  width: ["width", "width"],
  "toe-angle": ["toeAngle", "toe-angle"],
  misalignment: ["misalignment", "misalignment"],
  "root-gap": ["rootGap", "root-gap"],
} as const;

/** A figure of the whole bead from its readings and what was specified; `missing` lists what it lacks. */
export function beadFigure(figure: BeadFigure, context: CaseContext): FigureOfBead {
  const { beadReadings, weld } = context.input;
  if (figure in plain) {
    const [reading, name] = plain[figure as keyof typeof plain];
    const quantity =
      beadReadings[reading] ??
      (figure === "width" && weld.faceWidthMm !== null ? statedQuantity(weld.faceWidthMm) : null);
    return quantity === null
      ? { quantity, used: [], missing: [missing(name)] }
      : { quantity, used: [reading], missing: [] };
  }
  if (figure === "throat-shortfall" || figure === "throat-excess") {
    const { throat } = beadReadings;
    const asked = context.symbols.a;
    if (throat === null || asked === null)
      return {
        quantity: null,
        used: [],
        missing: [
          ...(throat === null ? [missing("throat")] : []),
          ...(asked === null ? [missing("specified-throat")] : []),
        ],
      };
    const wanted = statedQuantity(asked.value);
    const quantity =
      figure === "throat-shortfall" ? differenceQuantity(wanted, throat) : differenceQuantity(throat, wanted);
    return { quantity: { ...quantity, source: throat.source }, used: ["throat"], missing: [] };
  }
  return legFigure(figure as LegFigure, context);
}

/**
 * What the least size is held against: the leg that was asked for, or the leg as laid where that is larger or nothing
 * was asked for. Laid shorter than asked for is a matter of the undersize rule, not of the least size.
 */
function askedOrLaid(askedMm: number | null, laid: Quantity): Quantity {
  return askedMm !== null && askedMm > laid.value ? statedQuantity(askedMm) : laid;
}

function legFigure(figure: LegFigure, context: CaseContext): FigureOfBead {
  const { leg1, leg2 } = context.input.beadReadings;
  const asked = context.symbols.z;
  const lacks = [
    ...(leg1 === null ? [missing("leg-1")] : []),
    ...(leg2 === null ? [missing("leg-2")] : []),
    ...(figure === "leg-shortfall" && asked === null ? [missing("specified-leg")] : []),
  ];
  if (leg1 === null || leg2 === null || (figure === "leg-shortfall" && asked === null))
    return { quantity: null, used: [], missing: lacks };
  const [shorter, longer] = leg1.value <= leg2.value ? [leg1, leg2] : [leg2, leg1];
  const quantity =
    figure === "leg-least"
      ? askedOrLaid(asked?.value ?? null, shorter)
      : figure === "leg-greatest"
        ? longer
        : figure === "leg-difference"
          ? differenceQuantity(longer, shorter)
          : { ...differenceQuantity(statedQuantity(asked!.value), shorter), source: shorter.source };
  return { quantity, used: ["leg1", "leg2"], missing: [] };
}
