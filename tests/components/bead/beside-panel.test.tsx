import { renderToStaticMarkup } from "react-dom/server";
import { expect, it } from "vitest";
import { BesidePanel, SideBySide } from "@/components/bead/beside-panel";
import { judge, JudgeInputSchema, listCriteria, type Verdict } from "@/lib/accept";
import { emptyBeadJudgement } from "@/lib/assess";
import { metric } from "@/lib/units";

const criteria = listCriteria();
function judged(criteriaId: string): Verdict {
  const result = judge(
    JudgeInputSchema.parse({
      criteriaId,
      weld: { kind: "butt", thicknessMm: 6, lengthMm: 300, singleSided: true, seam: "plate" },
      observations: [{ id: "u", imperfection: "undercut", alongMm: [10, 30], lengthMm: 20, depthMm: 0.4 }],
      lookedFor: "all",
      beadReadings: { reinforcement: 0.5, width: 10, misalignment: 0 },
    }),
  );
  if (!result.ok) throw new Error("not judged");
  return result.value;
}
const text = (html: string): string => html.replace(/<[^>]+>/g, " ").replace(/\s+/g, " ");

it("shows both words, both names and the clause that differs, with what each says of it", () => {
  const html = renderToStaticMarkup(
    <SideBySide first={judged("iso-5817-c")} second={judged("iso-5817-b")} units={metric} />,
  );
  const words = text(html);
  expect(words).toContain("Meets the criteria");
  expect(words).toContain("Does not meet");
  expect(words).toContain("ISO 5817 level C, 2014");
  expect(words).toContain("ISO 5817 level B, 2014");
  expect(words).toMatch(
    /Undercut, depth Met: read 0\.4 mm; limit at most 0\.5 mm .* Not met: read 0\.4 mm; limit at most 0\.3 mm/,
  );
});

it("says so when two verdicts differ in nothing", () => {
  const one = judged("iso-5817-c");
  expect(text(renderToStaticMarkup(<SideBySide first={one} second={one} units={metric} />))).toContain(
    "differ in none",
  );
});

it("offers every other set, points at the later edition, and judges nothing before one is chosen", () => {
  const html = renderToStaticMarkup(
    <BesidePanel
      criteria={criteria}
      judgement={{ ...emptyBeadJudgement, criteriaId: "iso-5817-c" }}
      verdict={judged("iso-5817-c")}
      judgeBy={() => {
        throw new Error("judged without being asked");
      }}
      units={metric}
    />,
  );
  const offered = [...html.matchAll(/<option value="([^"]+)"/g)].map(([, id]) => id);
  expect(offered.sort()).toEqual(
    criteria
      .map(({ id }) => id)
      .filter((id) => id !== "iso-5817-c")
      .sort(),
  );
  expect(text(html)).toContain("There is a later edition, 2023.");
});
