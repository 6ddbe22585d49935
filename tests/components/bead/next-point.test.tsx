import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import { AnswerPanel, type AnswerProps } from "@/components/bead/answer-panel";
import { answerKind, proposal, type AnswerKind } from "@/lib/assess";
import { diagnose, DiagnoseInputSchema } from "@/lib/diagnose";
import { trialSheet } from "@/lib/report";
import type { RunSetup } from "@/lib/setup";
import type { ImperfectionId } from "@/lib/trade";
import { metric } from "@/lib/units";
import { base, trialOf } from "../../lib/trials/simulated";

const seen = (setup: Partial<RunSetup>, imperfection: ImperfectionId) => {
  const evidence = DiagnoseInputSchema.parse({ setup: { ...base, ...setup }, findings: [{ imperfection }] });
  const found = diagnose(evidence);
  if (!found.ok) throw new Error(JSON.stringify(found.issues));
  return { evidence, diagnosis: found.value };
};
/** Slow, and nothing of it forbidden. */
const ordinary = seen({ travelSpeedMmPerMin: 150 }, "flat-wide-bead");
const wrongPole = seen({ polarity: "DCEP" }, "flat-wide-bead");
const sheet = trialSheet({ content: trialOf(1), number: 4 }, [], metric);
const trial = { id: "t4", title: sheet.title, place: "Run 1 of 10", next: sheet.next };

const html = (
  inTrial: AnswerProps["inTrial"],
  { evidence, diagnosis }: ReturnType<typeof seen> = ordinary,
  kind: AnswerKind = answerKind(diagnosis, true),
): string =>
  renderToStaticMarkup(
    <AnswerPanel
      kind={kind}
      diagnosis={diagnosis}
      evidence={evidence}
      proposed={proposal(diagnosis)}
      units={metric}
      onAnswer={() => {}}
      onRunAgain={() => Promise.resolve()}
      inTrial={inTrial}
    />,
  );
const text = (markup: string): string =>
  markup
    .replace(/<[^>]+>/g, " ")
    .replace(/\s+/g, " ")
    .replaceAll("&#x27;", "'");
const own = ({ diagnosis }: ReturnType<typeof seen>): string => proposal(diagnosis)!.first.sentence;

describe("the one change of a bead in a series", () => {
  it("is the next point of the trial, with the way there", () => {
    expect(answerKind(ordinary.diagnosis, true)).toBe("change");
    const markup = html(trial);
    expect(markup).toContain('data-testid="next-point"');
    expect(markup).toContain('href="/trials/t4"');
    expect(text(markup)).toContain(sheet.next);
    expect(sheet.next).toMatch(/^Run 1 of 10: travel speed \d+ mm\/min\.$/);
  });

  it("holds back what the bead by itself would want: it waits folded, and says why", () => {
    const markup = html(trial);
    const [before, folded] = markup.split("<details");
    expect(text(before!)).not.toContain(own(ordinary));
    expect(before).not.toContain("Run it again");
    expect(text(folded!)).toContain("Not while the trial runs");
    expect(text(markup)).toContain(own(ordinary));
  });

  it("is the bead's own where it is in no series", () => {
    const markup = html(null);
    expect(markup).not.toContain("next-point");
    expect(text(markup.split("<details")[0]!)).toContain(own(ordinary));
  });

  it("gives way where the record says that something is plainly wrong: a series run so shows nothing", () => {
    const markup = html(trial, wrongPole);
    expect(markup).not.toContain("next-point");
    expect(text(markup.split("<details")[0]!)).toContain(own(wrongPole));
  });

  it("stands behind an inspector in a series too", () => {
    const markup = html(trial, ordinary, "inspector");
    expect(markup).toContain('data-testid="inspector-first"');
    expect(markup).not.toContain("next-point");
  });
});
