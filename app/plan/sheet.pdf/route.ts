import { dear } from "@/app/_door/dear-work";
import { pdfAnswer } from "@/app/_door/pdf-answer";
import { routeFor } from "@/app/_door/route-for";
import { palette } from "@/components/picture";
import { drawPaper } from "@/lib/aside";
import { planIssueSentence, planRun } from "@/lib/plan";
import { runSheet } from "@/lib/report";
import { planAsked } from "../plan-asked";

export const dynamic = "force-dynamic";

/** The run sheet of the plan that the address asks for, as a PDF; 422 with the reasons where there is none. */
export const GET = routeFor(
  "bead.read",
  dear(async (_now, request) => {
    const { ask, units } = await planAsked(new URL(request.url).searchParams);
    const planned = planRun(ask);
    if (!planned.ok) {
      const issues = planned.issues.map((issue) => ({
        code: issue.code,
        message: planIssueSentence(issue, units),
      }));
      return Response.json({ issues }, { status: 422 });
    }
    const bytes = await drawPaper(
      "runSheet",
      {
        sheet: runSheet(planned.value, ask, units),
        ink: palette.text,
        // The same plan is the same sheet on every day; a fixed date keeps the file the same as well.
        createdAt: "2026-01-01T00:00:00.000Z",
      },
      request.signal,
    );
    return pdfAnswer(bytes, "toeline-run-sheet.pdf");
  }),
);
