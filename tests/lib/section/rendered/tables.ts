import { macroNames } from "@/demo-images";
import { sectionFigureIds, sectionFigures } from "@/lib/section";
import { coverage, type Share } from "../../measure/rendered/summary";
import { sectionScales, type SectionCase, type SectionScale, type SectionStudy } from "./study";

const scaleNames: Readonly<Record<SectionScale, string>> = {
  rule: "two points on a rule, held square",
  card: "card by its edges, to 25 degrees",
  strip: "printed strip, found in the pixels",
};
const percent = (share: number): string => (100 * share).toFixed(1);
const shareText = ({ share, low, high }: Share): string =>
  `${percent(share)} % (${percent(low)} to ${percent(high)})`;

/** Coverage and the usual error of the cases, in their own unit where they share one. */
function row(name: string, cases: readonly SectionCase[]): string {
  const units = new Set(cases.map(({ unit }) => unit));
  const sorted = cases.map(({ stated }) => Math.abs(stated.error)).sort((a, b) => a - b);
  const median = sorted[Math.floor(sorted.length / 2)] ?? NaN;
  const bias = cases.reduce((sum, { stated }) => sum + stated.error, 0) / cases.length;
  const shown = (value: number): string => (units.size === 1 ? value.toFixed(3) : "-");
  return `| ${[
    name,
    `${new Set(cases.map(({ photo }) => photo)).size}`,
    `${cases.length}`,
    shareText(coverage(cases, "stated")),
    shareText(coverage(cases, "doubled")),
    shown(bias),
    shown(median),
    [...units].join(", "),
  ].join(" | ")} |`;
}

const head = (first: string): string =>
  [
    `| ${first} | sections | figures | truth inside the stated interval | same, picks twice as bad | bias | median error | unit |`,
    "| --- | --- | --- | --- | --- | --- | --- | --- |",
  ].join("\n");

/** The study of sections in words and Markdown tables. */
export function sectionTables(
  { cases, sections, unread, stripsRefused }: SectionStudy,
  date: string,
): string {
  const rows = <K extends string>(
    keys: readonly K[],
    name: (key: K) => string,
    of: (one: SectionCase) => K,
  ): readonly string[] =>
    keys.flatMap((key) => {
      const mine = cases.filter((one) => of(one) === key);
      return mine.length === 0 ? [] : [row(name(key), mine)];
    });
  return [
    `${sections} rendered sections, ${date}: outline, edges and root drawn by an unsteady hand, the scale object within`,
    "half a millimetre of level. All figures of one section share its picks and its scale, which the 95 % interval in",
    `parentheses allows for. ${unread.length} figures not read; ${stripsRefused} strips refused.`,
    "",
    head("scale beside the section"),
    ...rows(
      sectionScales,
      (key) => scaleNames[key],
      (one) => one.scale,
    ),
    row("all", cases),
    "",
    head("figure"),
    ...rows(
      sectionFigureIds,
      (key) => sectionFigures[key].name,
      (one) => one.figure,
    ),
    "",
    head("section"),
    ...rows(
      macroNames,
      (key) => key,
      (one) => one.scenario,
    ),
  ].join("\n");
}
