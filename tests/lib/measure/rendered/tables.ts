import { figureKinds } from "./figures";
import { scaleKinds, type ScaleKind } from "./scales";
import type { StudyCase, StudyResult } from "./study";
import { coverage, lengthErrors, type Share } from "./summary";

const scaleNames: Readonly<Record<ScaleKind, string>> = {
  "two-points": "two points on a rule, held square",
  rectangle: "rectangle of known size, four corners",
  edges: "card by its edges",
  disc: "disc",
  strip: "printed strip, found in the pixels",
};

const percent = (share: number): string => (100 * share).toFixed(1);
const shareText = ({ share, low, high }: Share): string =>
  `${percent(share)} % (${percent(low)} to ${percent(high)})`;

function row(name: string, cases: readonly StudyCase[]): string {
  const { biasMm, spreadMm, medianMm } = lengthErrors(cases);
  const photos = new Set(cases.map(({ photo }) => photo)).size;
  const mm = [biasMm, spreadMm, medianMm].map((one) => (Number.isFinite(medianMm) ? one.toFixed(2) : "-"));
  return `| ${[
    name,
    `${photos}`,
    `${cases.length}`,
    shareText(coverage(cases, "stated")),
    shareText(coverage(cases, "doubled")),
    ...mm,
  ].join(" | ")} |`;
}

const head = (first: string): string =>
  [
    `| ${first} | photos | figures | truth inside the stated interval | same, picks twice as bad | bias mm | spread mm | median error mm |`,
    "| --- | --- | --- | --- | --- | --- | --- | --- |",
  ].join("\n");

/** The study in words and Markdown tables. */
export function studyTables({ cases, photos, notWhole, stripsRefused }: StudyResult, date: string): string {
  const tilts = [
    [0, 10],
    [10, 20],
    [20, 36],
  ] as const;
  const byTilt = (kinds: readonly ScaleKind[]): readonly string[] =>
    tilts.map(([low, high]) =>
      row(
        `${low} to ${high === 36 ? 35 : high} degrees`,
        cases.filter(({ scale, tiltDeg }) => kinds.includes(scale) && tiltDeg >= low && tiltDeg < high),
      ),
    );
  return [
    `${photos} rendered photographs, ${date}. In parentheses the 95 % interval of the share itself (Wilson), for the`,
    "effective number of cases: the figures of one photo have picks of their own but share its tilt and lens. Bias, spread",
    `and median are of lengths, widths and diameters. ${notWhole} scales not whole in view; ${stripsRefused} strips refused.`,
    "",
    head("scale in the photo"),
    ...scaleKinds.map((kind) =>
      row(
        scaleNames[kind],
        cases.filter(({ scale }) => scale === kind),
      ),
    ),
    row("all", cases),
    "",
    head("figure"),
    ...figureKinds.map((kind) =>
      row(
        kind,
        cases.filter(({ figure }) => figure === kind),
      ),
    ),
    "",
    head("tilt, card or strip"),
    ...byTilt(["edges", "strip"]),
    "",
    head("tilt, disc"),
    ...byTilt(["disc"]),
  ].join("\n");
}
