/**
 * Lighthouse's own picture of a middle-class phone on a slow line, three runs of each page, medians, and beside them those of the two
 * bare pages: what this machine leaves a page that does nothing. Lighthouse is no part of this
 * project (176 MB with what it brings): npx fetches it once; where it cannot, the lines say so.
 */
import { execFile } from "node:child_process";
import { promisify } from "node:util";
import { browserFile } from "../e2e/support/browser";
import { bareNames, withBare } from "./bare";
import { median, type Figure } from "./figures";
import type { Shop } from "./shop";

const VERSION = "13.5.0";
const RUNS = 3;
const run = promisify(execFile);

const categories = [
  { id: "performance", least: 95 },
  { id: "accessibility", least: 100 },
  { id: "best-practices", least: 100 },
] as const;

interface Report {
  readonly categories: Readonly<Record<string, { readonly score: number | null }>>;
  readonly audits: Readonly<
    Record<string, { readonly score: number | null; readonly title: string; readonly numericValue?: number }>
  >;
}

async function lookAt(url: string): Promise<Report> {
  const asked = [
    ...["--yes", "--ignore-scripts", `lighthouse@${VERSION}`, url],
    ...["--output=json", "--quiet", "--no-enable-error-reporting"],
    `--only-categories=${categories.map(({ id }) => id).join()}`,
    "--chrome-flags=--headless --no-sandbox --disable-gpu",
  ];
  const env = { ...process.env, CHROME_PATH: await browserFile() };
  const { stdout } = await run("npx", asked, { env, maxBuffer: 2 ** 28 });
  return JSON.parse(stdout) as Report;
}

/** Whole points, as Lighthouse gives them: its hundredths are no binary fractions. */
const scoreOf = (report: Report, id: string): number =>
  Math.round(100 * (report.categories[id]?.score ?? NaN));

/** What costs a page most, for whoever mends it. */
function partsOf(reports: readonly Report[]): string {
  const value = (id: string): string =>
    (median(reports.map(({ audits }) => audits[id]?.numericValue ?? NaN)) / 1000).toFixed(1);
  const parts = ["first-contentful-paint", "largest-contentful-paint", "total-blocking-time"].map(value);
  return `first paint ${parts[0]} s, largest ${parts[1]} s, blocked ${parts[2]} s`;
}

/** Titles of what was found wanting. */
function wanting(report: Report, id: string): string {
  const has = report.categories[id] as { auditRefs?: readonly { id: string; weight: number }[] } | undefined;
  return (has?.auditRefs ?? [])
    .filter((ref) => ref.weight > 0 && (report.audits[ref.id]?.score ?? 1) < 1)
    .map((ref) => report.audits[ref.id]?.title ?? ref.id)
    .join("; ");
}

export async function lighthouseFigures({ url, pages }: Shop): Promise<readonly Figure[]> {
  const [empty, stage] = await withBare(async (bare) => [
    await lookedAt(bare),
    await lookedAt(`${bare}/stage`),
  ]);
  const figures: Figure[] = [];
  for (const [page, at] of Object.entries(pages)) {
    const isStage = page === "workbench";
    const baseline = { name: isStage ? bareNames.stage : bareNames.empty, looked: isStage ? stage : empty };
    figures.push(...pageFigures(page, await lookedAt(url + at), baseline));
  }
  return figures;
}

interface Looked {
  readonly reports: readonly Report[];
  /** Why there are none; empty: there are. */
  readonly why: string;
}

async function lookedAt(url: string): Promise<Looked> {
  const reports: Report[] = [];
  let why = "";
  for (let turn = 0; turn < RUNS && why === ""; turn += 1)
    await lookAt(url).then(
      (report) => reports.push(report),
      (error: Error) => (why = `Lighthouse did not run: ${error.message.split("\n")[0]}`),
    );
  return { reports, why };
}

function pageFigures(
  page: string,
  { reports, why }: Looked,
  baseline: { readonly name: string; readonly looked: Looked },
): readonly Figure[] {
  return categories.map(({ id, least }) => {
    const scores = reports.map((report) => scoreOf(report, id));
    const bare = median(baseline.looked.reports.map((report) => scoreOf(report, id)));
    const first = reports[0];
    const found =
      id === "performance" || !first
        ? `${partsOf(reports)} (bare: ${partsOf(baseline.looked.reports)})`
        : wanting(first, id);
    return {
      work: `Lighthouse mobile, ${page}, ${id.replace("-", " ")}`,
      ours: why ? NaN : median(scores),
      unit: "points" as const,
      baseline: id === "performance" ? { name: baseline.name, value: bare } : null,
      goal: { kind: "least", least } as const,
      note:
        why ||
        [scores.length > 1 && id === "performance" ? scores.join(", ") : "", found]
          .filter(Boolean)
          .join("; "),
    };
  });
}
