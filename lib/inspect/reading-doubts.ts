import { missingWords } from "@/lib/report";
import { calibrationOn, instrumentLabel, type Instrument } from "./instrument";
import type { SignedBead } from "./signed-record";

/** What speaks against a gauge on the day it was read: on none of these does a reading carry an acceptance. */
export type GaugeDoubt = "overdue" | "not-yet" | "not-recorded" | "day-unknown" | "not-ticked";

/** Readings of one bead taken with one gauge that is not known to have been valid that day. */
export interface ReadingDoubt {
  readonly weldId: string;
  readonly bead: number;
  /** In words: "throat, depth of mark 2". */
  readonly readings: readonly string[];
  /** As the readings say it. */
  readonly gauge: string;
  readonly doubt: GaugeDoubt;
  /** Days of the gauge where it is one that is ticked. */
  readonly dueOn: string | null;
  readonly calibratedOn: string | null;
}

/**
 * Readings whose gauge is not known to have been in calibration on the day of the inspection, each gauge once a bead.
 * A reading names its gauge in words (`instrumentLabel`), so that is what is compared with the instruments ticked.
 */
export function readingDoubts(
  beads: readonly SignedBead[],
  instruments: readonly Instrument[],
  day: string | null,
): readonly ReadingDoubt[] {
  return beads.flatMap((bead) =>
    [...readingsByGauge(bead)].flatMap(([gauge, readings]): ReadingDoubt[] => {
      const found = gaugeDoubt(gauge, instruments, day);
      return found === null ? [] : [{ weldId: bead.weldId, bead: bead.number, readings, gauge, ...found }];
    }),
  );
}

/** Every reading of a bead, of the whole weld and of single marks, in words, by the gauge it was taken with. */
export function readingsByGauge(bead: SignedBead): ReadonlyMap<string, readonly string[]> {
  const all = new Map<string, string[]>();
  const put = (gauge: string, words: string) => {
    const there = all.get(gauge) ?? [];
    if (!there.includes(words)) all.set(gauge, [...there, words]);
  };
  for (const { quantity, instrument } of bead.judgement.readings) put(instrument, missingWords[quantity]);
  for (const [photo, { drawing }] of bead.photos.entries())
    for (const [i, mark] of drawing.marks.entries())
      for (const { quantity, instrument } of mark.gauge)
        put(
          instrument,
          `${missingWords[quantity]} of mark ${i + 1}${bead.photos.length > 1 ? ` on photo ${photo + 1}` : ""}`,
        );
  return all;
}

/** Null: the gauge is ticked and was valid on that day. */
function gaugeDoubt(
  gauge: string,
  instruments: readonly Instrument[],
  day: string | null,
): Pick<ReadingDoubt, "doubt" | "dueOn" | "calibratedOn"> | null {
  const named = instruments.filter((one) => instrumentLabel(one) === gauge);
  if (named.length === 0) return { doubt: "not-ticked", dueOn: null, calibratedOn: null };
  // Where two gauges go by one label, either may have been in hand: the reading is as good as the worse of them.
  for (const { dueOn, calibratedOn, ...one } of named) {
    if (day === null) return { doubt: "day-unknown", dueOn, calibratedOn };
    const standing = calibrationOn({ dueOn, calibratedOn, ...one }, day);
    if (standing === "valid") continue;
    // What is only looked through needs no calibration, but then it gives no size either.
    return { doubt: standing === "needs-none" ? "not-recorded" : standing, dueOn, calibratedOn };
  }
  return null;
}
