import type { PointCode } from "./point-weights";
import type { SignedBead, SignedRecord } from "./signed-record";

export interface OpenWeld {
  readonly weldId: string;
  readonly number: string;
  /** Each thing that keeps it open, and what would close it. */
  readonly reasons: readonly { readonly sentence: string; readonly closing: string }[];
}

/** What settles each point that keeps a weld open. */
const closings: Partial<Record<PointCode, string>> = {
  "extent-asked-unknown": "Write on the job how much of it is to be inspected, in % or as a length.",
  "extent-seen-unknown": "Write how much of it was seen, in % or as a length.",
  "extent-not-comparable": "Write the weld's length on the job, or both figures in one unit.",
  "extent-beyond-length": "Correct the weld's length or the figure that is wrong.",
  "extent-short": "Look at the rest of it, then write how much was seen.",
  "size-other": "Set the size on the bead to the one that is asked, or correct the job.",
  "length-short":
    "Read the length again, or correct the job; a weld that is too short goes to whoever designed it.",
  "certificate-expired": "Whoever signs needs a certificate that held on that day.",
  "weld-without-bead": "Put the bead that was run on it on this weld.",
  "bead-without-verdict": "Choose the acceptance criteria on the bead.",
  "reading-instrument-not-ticked": "Tick the gauge as used, or read again with one that is ticked.",
  "reading-gauge-overdue":
    "Read again with a gauge in date and take this reading off, or enter the calibration if it was done.",
  "reading-gauge-not-yet":
    "Read again with a gauge in date and take this reading off, or enter the earlier calibration.",
  "reading-gauge-not-recorded": "Enter when its calibration is due, or read again with a gauge in date.",
  "reading-gauge-day-unknown": "Write the day of the inspection.",
};

/** The welds of a record that are open, in its order, each with what would close it. */
export function openWelds(record: SignedRecord): readonly OpenWeld[] {
  return record.weldResults
    .filter(({ result }) => result === "open")
    .map(({ weldId }) => ({
      weldId,
      number: record.job.content.welds.find(({ id }) => id === weldId)?.number ?? weldId,
      reasons: [
        ...record.points.flatMap(({ code, weldId: at, sentence }) => {
          const closing = at === weldId ? closings[code as PointCode] : undefined;
          return closing === undefined ? [] : [{ sentence, closing }];
        }),
        ...record.beads.filter((bead) => bead.weldId === weldId).flatMap(openClauses),
      ],
    }));
}

function openClauses({ number, result, verdict }: SignedBead): OpenWeld["reasons"] {
  if (result !== "open" || verdict === null) return [];
  const wanted = [
    verdict.missing.length > 0 ? `Still wanted: ${verdict.missing.join("; ")}.` : "",
    verdict.notLookedFor.length > 0 ? `Still to be looked for: ${verdict.notLookedFor.join(", ")}.` : "",
  ].filter(Boolean);
  return [
    {
      sentence: `Bead ${number}: some clauses are open.`,
      closing: wanted.join(" ") || "Its clauses say what they wait for; a qualified person decides.",
    },
  ];
}
