import type { GaugeReading } from "@/lib/marks";
import { beadQuantityRows } from "@/lib/measure";
import { missingWords } from "@/lib/report";
import { lengthIn, type PaperUnits } from "./paper-units";
import type { SignedBead } from "./signed-record";

/** One reading in words, with its unit. */
export interface ReadingRow {
  /** "Leg on the first plate", "Depth of mark 2 on photo 1" */
  readonly what: string;
  readonly read: string;
  /** With what a study of it says of the reading, where there was one. */
  readonly instrument: string;
  readonly step: string;
}

/** A length that may lie below nought, as a hollow face has it. */
const signed = (mm: number, units: PaperUnits): string =>
  mm < 0 ? lengthIn(units, -mm).replace(/\d[\d.]* /g, (number) => `−${number}`) : lengthIn(units, mm);

/** U as it follows from the study, with where it comes from; to a hundredth, as no gauge says more. */
const studyText = (study: GaugeReading["study"], text: (value: number) => string): string =>
  study ? `; U ${text(Math.round(100 * study.k * study.u) / 100)} by the study of ${study.on}` : "";

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

/** Every reading of a bead, of the whole weld first, then of single marks as they are numbered on their photos. */
export function readingRows(bead: SignedBead, units: PaperUnits = "both"): readonly ReadingRow[] {
  const ofBead = bead.judgement.readings.map(({ quantity, value, instrument, resolution, study }) => {
    const { label, unit } = beadQuantityRows[quantity];
    const text = (number: number) => (unit === "deg" ? `${number}°` : signed(number, units));
    const taken = `${instrument}${studyText(study, text)}`;
    return { what: label, read: text(value), instrument: taken, step: text(resolution) };
  });
  const ofMarks = bead.photos.flatMap(({ drawing }, photo) =>
    drawing.marks.flatMap(({ gauge }, i) =>
      gauge.map(({ quantity, valueMm, instrument, resolutionMm, study }) => ({
        what: `${capital(missingWords[quantity])} of mark ${i + 1}${bead.photos.length > 1 ? ` on photo ${photo + 1}` : ""}`,
        read: signed(valueMm, units),
        instrument: `${instrument}${studyText(study, (mm) => signed(mm, units))}`,
        step: signed(resolutionMm, units),
      })),
    ),
  );
  return [...ofBead, ...ofMarks];
}
