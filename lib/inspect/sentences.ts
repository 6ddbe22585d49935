import { pointWeights, type PointCode, type PointIssue } from "./point-weights";

/** One clear sentence per point: what is not there or out of its limits, and what would settle it. */
export const pointSentences: Readonly<Record<PointCode, (point: PointIssue) => string>> = {
  "maker-missing": () => "The job does not say who made the part.",
  "procedure-missing": () => "The job names no welding procedure (WPS).",
  "process-missing": () => "The job does not say which welding process was used.",
  "criteria-missing": () => "The job names no acceptance criteria, so nothing can be judged against them.",
  "part-incomplete": ({ data }) => `Part ${data["part"]}: ${data["missing"]} not recorded.`,
  "weld-incomplete": ({ data }) => `Weld ${data["weld"]}: ${data["missing"]} not recorded.`,
  "extent-asked-unknown": ({ data }) =>
    `Weld ${data["weld"]}: how much of it is to be inspected is not recorded as a number${before(data)}.`,
  "extent-seen-unknown": ({ data }) =>
    `Weld ${data["weld"]}: how much of it was seen is not recorded as a number${before(data)}.`,
  "extent-not-comparable": ({ data }) =>
    `Weld ${data["weld"]}: ${data["asked"]} was asked and ${data["seen"]} was seen; without the weld's length nobody can tell how much is missing.`,
  "extent-beyond-length": ({ data }) =>
    `Weld ${data["weld"]}: ${data["asked"]} was asked and ${data["seen"]} was seen of a weld said to be ${data["length"]} long; one of these is wrong.`,
  "extent-short": ({ data }) =>
    `Weld ${data["weld"]}: ${data["asked"]} was asked and ${data["seen"]} was seen; ${data["missing"]} of the weld is still to be looked at.`,
  "size-other": ({ data }) =>
    `Weld ${data["weld"]}: ${data["asked"]} is asked on the job, and bead ${data["bead"]} was judged ${data["judged"]}.`,
  "length-short": ({ data }) =>
    `Weld ${data["weld"]}: ${data["asked"]} long is asked, and ${data["read"]} was read on bead ${data["bead"]}.`,
  "weld-without-bead": ({ data }) =>
    `Weld ${data["weld"]}: no bead is attached, so nothing was recorded of it.`,
  "welds-none": () => "No weld is ticked as looked at.",
  "date-missing": () => "The day of the inspection is not recorded.",
  "look-missing": () => "Whether the look was direct or remote is not recorded.",
  "remote-aid-missing": () => "The look was remote; by what (mirror, borescope, camera) is not recorded.",
  "light-missing": () => "The light at the surface was not recorded; ISO 17637 asks for at least 350 lx.",
  "light-low": ({ data }) => `The light was ${data["lux"]} lx; ISO 17637 asks for at least 350 lx.`,
  "light-below-recommended": ({ data }) => `The light was ${data["lux"]} lx; ISO 17637 recommends 500 lx.`,
  "distance-missing": () => "The distance of the eye was not recorded; ISO 17637 asks for 600 mm or less.",
  "distance-far": ({ data }) => `The eye was ${data["mm"]} mm away; ISO 17637 asks for 600 mm or less.`,
  "angle-missing": () => "The viewing angle was not recorded; ISO 17637 asks for 30 degrees or more.",
  "angle-low": ({ data }) =>
    `The viewing angle was ${data["degrees"]} degrees to the surface; ISO 17637 asks for 30 degrees or more.`,
  "surface-missing": () => "The condition of the surface is not recorded.",
  "certificate-missing": () => "The inspector's certificate is not recorded.",
  "certificate-expiry-unknown": ({ data }) =>
    `Until when certificate ${data["certificate"]} of the inspector holds is not recorded.`,
  "certificate-expired": ({ data }) =>
    `Weld ${data["weld"]}: certificate ${data["certificate"]} of the inspector ended on ${data["until"]}, before the inspection on ${data["day"]}.`,
  "instruments-none": () => "No instrument is ticked as used.",
  "instrument-overdue": ({ data }) =>
    `${named(data)} was due for calibration on ${data["due"]}, before the inspection.`,
  "instrument-not-yet": ({ data }) =>
    `${named(data)} was calibrated on ${data["from"]}, after the inspection; how it stood before is not known.`,
  "instrument-not-recorded": ({ data }) => `${named(data)} has no calibration due date.`,
  "instrument-without-serial": ({ data }) =>
    `${data["name"]} (${data["kind"]}) has no serial number recorded.`,
  "reading-instrument-not-ticked": ({ data }) =>
    `${reading(data)}, which is not among the instruments ticked here, so nothing is known of its calibration.`,
  "reading-gauge-overdue": ({ data }) =>
    `${reading(data)}, which was due for calibration on ${data["due"]}, before the inspection on ${data["day"]}.`,
  "reading-gauge-not-yet": ({ data }) =>
    `${reading(data)}, which was calibrated on ${data["from"]}, after the inspection on ${data["day"]}; how it stood before is not known.`,
  "reading-gauge-not-recorded": ({ data }) => `${reading(data)}, which has no calibration due date.`,
  "reading-gauge-day-unknown": ({ data }) =>
    `${reading(data)}; as the day of the inspection is not recorded, nobody can tell whether its calibration held.`,
  "bead-without-verdict": ({ data }) => `Bead ${data["bead"]} has no verdict: no criteria are chosen on it.`,
  "bead-open": ({ data }) => `Bead ${data["bead"]}: some clauses are open.`,
  "bead-other-criteria": ({ data }) =>
    `Bead ${data["bead"]} was judged by ${data["criteria"]}, not by the criteria of its weld.`,
  "bead-without-photo": ({ data }) => `Bead ${data["bead"]} has no photo.`,
};

/** What an older record said in words, where it did. */
const before = ({ note }: PointIssue["data"]): string => (note ? ` (written: “${note}”)` : "");

const reading = (data: PointIssue["data"]): string =>
  `Weld ${data["weld"]}, bead ${data["bead"]}: ${data["readings"]} read with "${data["name"]}"`;

const named = (data: PointIssue["data"]): string => `${data["name"]} (${data["kind"]}, ${data["serial"]})`;

export const pointSentence = (point: PointIssue): string => pointSentences[point.code](point);

export const pointWeight = (point: PointIssue): "open" | "note" => pointWeights[point.code];

/** Stands on every record. */
export const statement =
  "This record says what was read and which clauses it met. Acceptance rests with the governing code, the contract and the qualified inspector who signs; it says nothing about what lies below the surface.";
