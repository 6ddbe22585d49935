import { ampsForThickness, AMPS_RULE_MAX_MM } from "@/lib/trade";
import { currentAt } from "./current";
import { finding, inOrder, type SetupFact, type SetupRule } from "./finding";
import type { RunSetup } from "./run-setup";
import { electrodeOf } from "./window-for";

/**
 * Without the class the kind of wire is a guess, and solid wire burns with a longer or shorter arc by its transfer: while
 * that is unknown its current is not judged.
 */
const judged = (setup: RunSetup) =>
  electrodeOf(setup) === null || (setup.process === "GMAW" && setup.transfer === null)
    ? null
    : currentAt(setup);

/** Recorded current against feed and tip to work, beyond twice the model's error, which grows outside its data. */
export const currentDisagrees: SetupRule = (setup) => {
  const computed = judged(setup);
  if (setup.amps === null || computed === null) return [];
  const { amps, highAmps, source } = computed;
  const factor = (highAmps / amps) ** 2;
  const said = { data: { value: setup.amps, computed: amps, error: highAmps / amps - 1 }, source };
  const fields = ["amps", "wireFeedMPerMin", "ctwdMm"] as const;
  return setup.amps < amps / factor || setup.amps > amps * factor
    ? [finding("current-disagrees", "warn", [...fields], said)]
    : [];
};

/** How far from an ampere for a thousandth of an inch a current may be before it speaks. Own estimate. */
export const PLATE_RULE = { below: 0.5, above: 1.6 };

/**
 * The rule of thumb for steel up to 1/4 in, against the current as recorded and as computed, each for itself: what one
 * says must not hang on whether the other is known.
 */
export const currentForPlate: SetupRule = (setup) => {
  // A covered rod is chosen by its size, and carries what its core carries on thick plate too.
  if (setup.thicknessMm === null || setup.process === null || setup.process === "SMAW") return [];
  // Thicker plate is filled in passes, but none of them wants less than the thickest the rule is given for.
  const rule = ampsForThickness(Math.min(setup.thicknessMm, AMPS_RULE_MAX_MM));
  if (rule === null) return [];
  const against = (amps: number, field: "amps" | "wireFeedMPerMin"): readonly SetupFact[] => {
    const ratio = amps / rule.amps;
    const thick = setup.thicknessMm! > AMPS_RULE_MAX_MM;
    const times = Math.max(ratio, 1 / ratio);
    const said = { data: { value: amps, wanted: rule.amps, times }, source: rule.source };
    const code = ratio <= PLATE_RULE.below ? "current-below-plate" : "current-above-plate";
    if (ratio > PLATE_RULE.below && (ratio < PLATE_RULE.above || thick))
      return [inOrder(code, [field, "thicknessMm"], said)];
    return [finding(code, "note", [field, "thicknessMm"], said)];
  };
  const computed = judged(setup)?.amps ?? null;
  return [
    ...(setup.amps === null ? [] : against(setup.amps, "amps")),
    ...(computed === null ? [] : against(computed, "wireFeedMPerMin")),
  ];
};
