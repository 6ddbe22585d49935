import { fail, ok, type Result } from "@/lib/base";
import { electrodeOf, onePass, wireOf, type RunSetup } from "@/lib/setup";
import type { PlanAsk } from "./ask";
import { feedBounds, type FeedBounds } from "./bounds";
import { choose, type Chosen } from "./choose";
import { objections } from "./gate";
import { planIssue, type PlanIssue } from "./issues";
import { modelFor, type Model } from "./model";
import { settle } from "./settle";
import { sizeOf, type Size } from "./size";

/** Everything a plan is made of, before it is worked out what it gives. */
export interface Draft {
  readonly model: Model;
  readonly bounds: FeedBounds;
  readonly size: Size;
  readonly chosen: Chosen;
}

/** The settings for what is asked, or every reason why there are none. What the check objects to is never drafted. */
export function draftRun(ask: PlanAsk): Result<Draft, PlanIssue> {
  const settled = settle(ask);
  if (!settled.ok) return settled;
  const model = modelFor(settled.value);
  if (model === null) return fail(planIssue("no-row", "electrodeDiameterMm"));
  if (!hasBurnOff(model)) return fail(planIssue("no-burn-off", "electrodeDiameterMm"));
  const bounds = feedBounds(model);
  if (!bounds.open) return fail(shut(model.setup, bounds));
  const size = sizeOf(model.setup, ask);
  const chosen = choose(model, bounds, size, ask);
  const wrong = [...tooManyPasses(chosen), ...objections(chosen.setup)];
  return wrong.length > 0 ? fail(...wrong) : ok({ model, bounds, size, chosen });
}

/** Stainless solid wire draws less than the carbon steel one its burn-off is known for: silent rather than wrong. */
function hasBurnOff({ setup, lines, at }: Model): boolean {
  if (wireOf(setup)?.kind === "solid" && electrodeOf(setup)?.metal === "stainless") return false;
  return at(lines[0]!.feedMPerMin[0]) !== null;
}

/** No feed is left: which two ends have met. */
function shut(setup: RunSetup, { top, bottom }: FeedBounds): PlanIssue {
  const data = { value: setup.thicknessMm!, inputPower: setup.inputPower ?? "" };
  const byInput = top.code === "input-top" || top.code === "input-power";
  if (top.code === "plate-hot") return planIssue("plate-too-thin", "thicknessMm", data);
  if (bottom.code !== "plate-cold")
    return byInput
      ? planIssue("wire-beyond-input", "inputPower", data)
      : planIssue("rows-disagree", "electrodeDiameterMm", data);
  return planIssue(byInput ? "plate-beyond-input" : "plate-beyond-wire", "thicknessMm", data);
}

function tooManyPasses({ setup, passes }: Chosen): readonly PlanIssue[] {
  const electrode = electrodeOf(setup)!;
  return passes > 1 && electrode.passes === "single"
    ? [
        planIssue("single-pass-only", "targetLegMm", {
          electrode: electrode.id,
          passes,
          onePassMm: onePass(setup).mm,
        }),
      ]
    : [];
}
