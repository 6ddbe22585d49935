import { formatFigures, formatQuantity, lengthSystem } from "@/lib/units";
import { componentIds, type ComponentId, type ReadingStudy, type StudyFigures } from "./figures";
import { studyStanding, type Standing } from "./standing";
import type { CellUnit } from "./read-cells";
import type { GaugeStudy } from "./study";

export const componentNames: Readonly<Record<ComponentId, string>> = {
  repeatability: "Repeatability",
  reproducibility: "Reproducibility",
  gauge: "Both together",
  part: "Parts",
  total: "All",
};

export const componentSentences: Readonly<Record<ComponentId, string>> = {
  repeatability: "one person reads the same part again",
  reproducibility: "another person reads the same part",
  gauge: "what a reading is uncertain by",
  part: "how far the parts themselves differ",
  total: "everything that was seen",
};

const standings: Readonly<Record<Standing, string>> = {
  good: "The gauge and the hands are fine enough for this.",
  "may-do": "It may do, where what is read is not close to a limit.",
  poor: "Too coarse for this: a finer gauge, one way of holding it, or the mean of several readings.",
  "no-spread": "All readings of a part are alike, so the step of the gauge hides whatever spread there is.",
};

const percent = (share: number): string =>
  formatQuantity(share < 0.1 ? "share" : "wholeShare", share, "metric");

/** A length or angle of a study, in mm or degrees as it is stored, with three figures that count. */
export function studySize(value: number, shown: CellUnit): string {
  return shown === "deg"
    ? formatFigures("angle", value, "metric", 3)
    : formatFigures("length", value, lengthSystem(shown), 3);
}

/** What came of a study, in sentences, the most important first; lengths in inches where those are read. */
export function studyWords(
  study: GaugeStudy,
  figures: StudyFigures,
  lengths: "mm" | "in" = "mm",
): readonly string[] {
  const { components, categories, reading } = figures;
  const { repeatability, reproducibility, gauge } = components;
  const size = (value: number): string => studySize(value, study.unit === "deg" ? "deg" : lengths);
  const line = figures.lines.find(({ id }) => id === "gauge");
  return [
    standings[studyStanding(figures)],
    `A reading has a standard uncertainty of ${size(gauge.sigma)}: ${size(repeatability.sigma)} from reading again, ${size(reproducibility.sigma)} from who reads.`,
    line && line.ofTolerance !== null
      ? `Six of them are ${percent(line.ofTolerance)} of the tolerance of ${size(study.tolerance ?? 0)}.`
      : "",
    line && line.ofStudy !== null
      ? `That is ${percent(line.ofStudy)} of all variation in the study${categories === null ? "" : `; it tells ${categories} ${categories === 1 ? "group" : "groups"} of parts apart`}.`
      : "",
    components.pooled
      ? "Nobody reads some parts differently from the others, as far as this study shows."
      : "Who reads matters more on some parts than on others: look at how the gauge is held there.",
    reading === null
      ? "It does not count for readings: that takes two people, five parts and two tries at least, and readings that differ."
      : `Readings with this gauge from ${study.on} on carry U = ${size(reading.k * reading.u)} (about 95 %), or that of its step where it is larger.`,
  ].filter(Boolean);
}

/** The table behind it as rows of a spreadsheet: first what was read, then what came of it. */
export function studyTable(
  study: GaugeStudy,
  figures: StudyFigures,
): readonly (readonly (string | number)[])[] {
  const { unit, people, parts, values } = study;
  const readings = values.flatMap((own, i) =>
    own.flatMap((tries, j) =>
      tries.map((value, t) => [people[i] ?? "", parts[j] ?? "", t + 1, value] as const),
    ),
  );
  const results = componentIds.flatMap((id) => {
    const found = figures.lines.find((one) => one.id === id);
    if (!found) return [];
    const { sigma, bounds, ofStudy, ofTolerance } = found;
    return [
      [componentNames[id], sigma, bounds?.low ?? "", bounds?.high ?? "", ofStudy ?? "", ofTolerance ?? ""],
    ];
  });
  return [
    ["Person", "Part", "Try", `Reading (${unit})`],
    ...readings,
    [],
    [
      "Component",
      `Standard deviation (${unit})`,
      "95 % from",
      "95 % to",
      "Share of study",
      "Six of it in tolerance",
    ],
    ...results,
  ];
}

/** What stands behind the gauge of a reading that carries a study: "; U 0.74 mm by the study of 2026-11-20". */
export const carriedText = (study: Omit<ReadingStudy, "unit"> | null, shown: CellUnit): string =>
  study === null ? "" : `; U ${studySize(study.k * study.u, shown)} by the study of ${study.on}`;
