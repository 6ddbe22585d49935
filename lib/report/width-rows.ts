import type { PhotoAssessment } from "@/lib/assess";
import type { Drawing } from "@/lib/marks";
import { drawnProfile, type BeadProfile } from "@/lib/trace";
import { travelByFace, travelSpeed, type RunSetup } from "@/lib/setup";
import { bareQuantity, formatQuantity, formatTravelSpeed, type UnitPreferences } from "@/lib/units";
import { lengthText, markSizeText } from "./length-text";
import type { LabelledRow } from "./setup-rows";

/** The profile of toes that somebody accepted; null without toes, without a scale that holds, and where the toes are a guess. */
export function acceptedProfile(
  { toes, marks }: Pick<Drawing, "toes" | "marks">,
  calibration: PhotoAssessment["calibration"] | null,
): BeadProfile | null {
  if (toes === undefined || !calibration?.ok) return null;
  return drawnProfile(calibration.value, toes, marks);
}

/** A tenth of a percent where it is under ten. */
const percent = (share: number): string =>
  formatQuantity(share < 0.1 ? "share" : "wholeShare", share, "metric");

/** Whether the width differs by more than the reader's own scatter would make of an even bead. */
export const isUneven = ({ worst25 }: BeadProfile): boolean =>
  worst25 !== null && worst25.differenceMm > worst25.doubtMm;

/**
 * The figures of a profile in words, the same on screen, sheet and paper. With a set-up the travel that such a width takes
 * stands beside what was recorded, where the model knows one.
 */
export function widthRows(
  profile: BeadProfile,
  units: UnitPreferences,
  setup: RunSetup | null = null,
): readonly LabelledRow[] {
  const { mean, spread, worst25, offStraight, widest, narrowest, sureShare } = profile;
  const length = (mm: number): string => lengthText(mm, units);
  return [
    { label: "Mean width", value: lengthText(mean.value, units, mean.expandedUncertainty) },
    { label: "Spread of the width", value: `${percent(spread)} at most` },
    {
      label: "Narrowest to widest",
      value: `${length(narrowest.width.value)} to ${length(widest.width.value)}`,
    },
    {
      label: "Differs most within 25 mm",
      value: worst25 ? `by ${length(worst25.differenceMm)}` : "bead too short",
    },
    {
      label: "Middle off a straight line",
      value: markSizeText(offStraight.value, units, offStraight.expandedUncertainty),
    },
    { label: "Both toes sure on", value: percent(sureShare) },
    ...(setup ? travelRows(setup, mean, units) : []),
  ];
}

/** "240 to 410 mm/min" and beside it what was recorded; none where no model tells it. Two short rows: values do not wrap. */
function travelRows(
  setup: RunSetup,
  mean: BeadProfile["mean"],
  units: UnitPreferences,
): readonly LabelledRow[] {
  const model = travelByFace(setup, mean);
  if (model === null) return [];
  const text = (mmPerMin: number): string => formatTravelSpeed(mmPerMin, units.travel);
  const low = bareQuantity("travelSpeed", model.low, units.travel === "mm/min" ? "metric" : "inch");
  const range = { label: "Travel for such a width", value: `${low} to ${text(model.high)}` };
  const recorded = travelSpeed(setup);
  if (recorded === null) return [range];
  const fits = recorded.mmPerMin >= model.low && recorded.mmPerMin <= model.high;
  const label = fits ? "Travel recorded: fits" : "Travel recorded: does not fit";
  return [range, { label, value: text(recorded.mmPerMin) }];
}

/** What stands below the figures wherever they are shown. */
export const WIDTH_NOTE =
  "Read off the photo and accepted by hand. Travel, where it is shown, is a wide check by metal balance, for a fillet laid in one pass, from wherever it was photographed. Dark slag or soot along a toe can pull it outwards; where metal rolled over the toe, the roll’s edge is read: mark overlap there, and it is left out. No verdict is made from these figures.";
