import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import { asParams } from "@/app/filter-questions";
import { pageFor } from "@/app/_door/here";
import { RunSheet } from "@/components/plan";
import { PrintButton } from "@/components/report";
import { Header } from "@/components/shell";
import { buttonClass } from "@/components/ui";
import { planQuery, planRun } from "@/lib/plan";
import { runSheet } from "@/lib/report";
import { planAsked } from "../plan-asked";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Run sheet" };

interface Search {
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export default async function RunSheetPage({ searchParams }: Search) {
  await pageFor("bead.read");
  const { ask, units } = await planAsked(asParams(await searchParams));
  const query = planQuery(ask);
  const planned = planRun(ask);
  if (!planned.ok) redirect(`/plan?${query}`);
  return (
    <>
      <Header>
        <Link href={`/plan?${query}`}>Back</Link>
        <a href={`/plan/sheet.pdf?${query}`} className={buttonClass()} style={{ color: "var(--ink)" }}>
          PDF
        </a>
        <PrintButton />
      </Header>
      <RunSheet sheet={runSheet(planned.value, ask, units)} />
    </>
  );
}
