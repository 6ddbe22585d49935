import { decisionRuleText } from "./decision-rule";
import { sectionWrittenFields } from "@/lib/report";
import { bothText, type PaperUnits } from "./paper-units";
import { readingRows } from "./reading-rows";
import { resultNames, type RecordRow } from "./record-sections";
import type { SignedBead, SignedSection } from "./signed-record";

/** The rule a verdict decided by; a record of version 1 holds it only as a setting. */
export const ruleOf = (verdict: NonNullable<SignedBead["verdict"]>): string =>
  verdict.decisionRule || decisionRuleText(verdict.settings);

/** What was found on one bead and how it was judged, as lines a comparison can hold side by side. */
export function beadRows(bead: SignedBead): readonly RecordRow[] {
  const { verdict } = bead;
  return [
    { label: "Result", value: resultNames[bead.result] },
    { label: "Criteria", value: verdict ? `${verdict.criteria}, ${verdict.edition}` : "none chosen" },
    ...(verdict ? [{ label: "Decision rule", value: ruleOf(verdict) }] : []),
    ...(verdict?.notCarried ? [{ label: "Not carried over", value: verdict.notCarried }] : []),
    ...bead.photos.map((photo, i) => ({
      label: `Photo ${i + 1}`,
      value: `${photo.role}, SHA-256 ${photo.sha256}`,
    })),
    ...bead.marks.map((mark) => ({
      label: `Mark ${mark.photo}:${mark.numbers}`,
      value: [mark.name, mark.iso6520 ?? "", mark.place, bothText(mark.size), mark.note]
        .filter(Boolean)
        .join("; "),
    })),
    ...(verdict?.clauses ?? []).map((one) => ({
      label: `Clause ${one.clause}, ${one.title}`,
      value: `${one.result}: ${bothText(one.detail)}`,
    })),
    ...bead.photos.flatMap(({ section }, i) => (section ? sectionRows(section, i + 1) : [])),
    ...(verdict && verdict.missing.length > 0
      ? [{ label: "Missing", value: verdict.missing.join("; ") }]
      : []),
    ...(verdict && verdict.notLookedFor.length > 0
      ? [{ label: "Not looked for", value: verdict.notLookedFor.join(", ") }]
      : []),
    ...readingRows(bead).map(({ what, read, instrument, step }) => ({
      label: `${what}, read with ${instrument}`,
      value: `${read} (smallest step ${step})`,
    })),
    ...(bead.judgement.note ? [{ label: "Note", value: bead.judgement.note }] : []),
  ];
}

/** What was read off a cut weld, and how each row of its criteria stood. */
export function sectionRows(
  { figures, unread, verdict, drawing }: SignedSection,
  photo: number,
  units: PaperUnits = "both",
): readonly RecordRow[] {
  const head = `Section, photo ${photo}`;
  return [
    ...(verdict
      ? [{ label: head, value: `${resultNames[verdict.result]} by ${verdict.criteria}` }]
      : [{ label: head, value: "no criteria chosen" }]),
    ...figures.map(({ name, text }) => ({ label: `${head}: ${name}`, value: bothText(text, units) })),
    ...(unread.length > 0 ? [{ label: `${head}: not read`, value: unread.join(", ") }] : []),
    ...(verdict?.clauses ?? []).map((one) => ({
      label: `${head}: ${one.title}, ${one.clause}`,
      value: [one.result, bothText(one.detail, units), one.checkYourCopy ? "check your copy" : ""]
        .filter(Boolean)
        .join("; "),
    })),
    ...sectionWrittenFields.flatMap(({ id, title }) => {
      const value = drawing.report[id];
      return value ? [{ label: `${head}: ${title}`, value }] : [];
    }),
  ];
}
