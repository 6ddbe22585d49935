import type { Metadata } from "next";
import { FilterPanel, type FilterQuestion } from "@/components/beads";
import { PrintButton } from "@/components/report";
import { Header } from "@/components/shell";
import { GroupPanel, ParetoPanel, RejectPanel } from "@/components/trends";
import { page, Panel } from "@/components/ui";
import { staleBeads, workInBackground } from "@/lib/beads";
import { countBeads, readFilter, recordedChoices, trendCounts, type BeadFilter } from "@/lib/find";
import { assessContext } from "@/lib/shop";
import {
  periods,
  shareText,
  trendFigures,
  trendSentence,
  type Period,
  type TrendFigures,
} from "@/lib/trends";
import { currentUnits } from "../_door/current-units";
import { asParams, askedFor, filterQuestions, hiddenParts, many, staleLine } from "../filter-questions";
import { pageFor } from "../_door/here";
import { seriesNames } from "../_door/series";
import { reachedBeads } from "../api/export/_asked/asked-beads";
import { groupingOf, groupings } from "./grouping";
import { groupLines, paretoLines, rejectPoints } from "./lines";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Trends" };

/** Bars of a Pareto before the rest is gathered. */
const MOST_BARS = 8;

export default async function TrendsPage({
  searchParams,
}: {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const now = await pageFor("trends.read");
  const params = asParams(await searchParams);
  const { filter } = readFilter(params);
  const { by, period } = groupingOf(params);
  const scope = reachedBeads(now.actor, "trends.read");
  const [{ shopSets }, { all }, choices, stale, counts] = await Promise.all([
    assessContext(now.db),
    countBeads(now.db, {}, scope),
    recordedChoices(now.db, scope),
    staleBeads(now.db, scope),
    trendCounts(now.db, filter, scope, by.column),
  ]);
  if (stale > 0) workInBackground(now.db);
  const called = await seriesNames(now.db, by.column);
  const report = trendFigures(counts, { period, most: MOST_BARS });
  const { preferences: units } = await currentUnits();
  return (
    <>
      <Header />
      <main className={page.wide}>
        <div>
          <div className={page.top}>
            <h1>Trends</h1>
            <PrintButton />
          </div>
          <p role="status" className={page.sum}>
            {summary(report, all)}
          </p>
        </div>
        {stale > 0 && <p className={page.notice}>{staleLine(stale)}</p>}
        <FilterPanel
          key={params.toString()}
          action="/trends"
          words={null}
          questions={[
            ...chartQuestions(by.id, period),
            ...filterQuestions(filter, choices, { sort: false, shopSets, units }),
          ]}
          asked={askedFor(filter, "/trends", {
            rest: new URLSearchParams({ by: by.id, period }).toString(),
            ...{ shopSets, units },
          })}
          hidden={hiddenParts({ ...many(filter), q: filter.q, job: filter.job })}
        />
        <ParetoPanel
          title="What is marked most"
          tone="blue"
          what="Imperfection"
          lines={paretoLines(report.imperfections.rows, filter, "imperfection")}
          none="Nothing is marked on these beads."
          note="Each imperfection counts once per bead, however often it is marked on it. What is found on one bead comes together, so “of all beads” is the surer share."
        />
        <ParetoPanel
          title="Confirmed causes"
          tone="purple"
          what="Cause"
          lines={paretoLines(report.causes.rows, filter, "cause")}
          none="No cause is confirmed yet: run a bead again with the proposed change and say what it did."
          note="A cause counts when the next bead, with that one change, was cured. It stands at the bead that had the fault."
        />
        <Rejects report={report} filter={filter} period={period} />
        {report.groups.length > 0 && (
          <GroupPanel
            label={by.label}
            lines={groupLines(report.groups, filter, called ? { ...by, wordOf: called } : by)}
          />
        )}
      </main>
    </>
  );
}

function chartQuestions(by: string, period: string): readonly FilterQuestion[] {
  return [
    {
      name: "by",
      label: "Groups by",
      kind: "choice",
      value: by,
      options: groupings.map(({ id, label }) => ({ value: id, label })),
      blank: null,
    },
    {
      name: "period",
      label: "One point for each",
      kind: "choice",
      value: period,
      options: periods.map((one) => ({ value: one, label: one })),
      blank: null,
    },
  ];
}

function summary({ beads, rejected, undecided }: TrendFigures, all: number): string {
  if (all === 0) return "Nothing recorded yet.";
  return [
    `${beads} of ${all} ${all === 1 ? "bead" : "beads"}.`,
    `Rejected: ${shareText(rejected)}.`,
    undecided > 0 ? `${undecided} without a decided verdict are left out of it.` : "",
  ]
    .filter(Boolean)
    .join(" ");
}

/** The control chart, or why there is none. */
function Rejects({
  report: { chart },
  filter,
  period,
}: {
  report: TrendFigures;
  filter: BeadFilter;
  period: Period;
}) {
  if (chart.ok)
    return (
      <RejectPanel chart={chart.value} lines={rejectPoints(chart.value.points, filter)} period={period} />
    );
  return (
    <Panel title="Rejects over time" tone="straw">
      <p>{chart.issues.map(trendSentence).join(" ")}</p>
    </Panel>
  );
}
