import type { Metadata } from "next";
import Link from "next/link";
import { Header } from "@/components/shell";
import { Field, form, LocalTime, page, Panel, SaidForm } from "@/components/ui";
import { inspectionState } from "@/lib/inspect";
import { listInspections, listJobs } from "@/lib/jobs";
import { pageFor } from "../_door/here";
import { createJobAction } from "./actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Jobs and inspections" };

/** The job's own page has the older ones. */
const SHOWN = 6;

export default async function JobsPage() {
  const now = await pageFor("job.read");
  const [jobs, inspections] = await Promise.all([listJobs(now.db), listInspections(now.db)]);
  const newestOf = (id: string) => inspections.filter(({ jobId }) => jobId === id).slice(0, SHOWN);
  return (
    <>
      <Header />
      <main className={page.page}>
        <h1>Jobs and inspections</h1>
        {jobs.length === 0 && <p className={page.note}>No job yet. A job holds parts, drawings and welds.</p>}
        {jobs.map(({ id, number, content, createdAt }) => (
          <Panel
            key={id}
            title={
              <Link href={`/jobs/${id}`}>
                Job {number}: {content.title}
              </Link>
            }
            tone="blue"
          >
            <p className={page.note}>
              <LocalTime iso={createdAt} only="day" /> ·{" "}
              {content.welds.length === 1 ? "1 weld" : `${content.welds.length} welds`}
              {content.procedure && ` · ${content.procedure}`}
            </p>
            <div className={form.row}>
              {newestOf(id).map((one) => (
                <Link key={one.id} href={`/inspections/${one.id}`}>
                  Inspection {one.number}: {inspectionState(one)}
                </Link>
              ))}
            </div>
          </Panel>
        ))}
        {now.may("job.write") && (
          <Panel title="New job" tone="straw">
            <SaidForm action={createJobAction} submit="Make the job">
              <Field label="Title">
                {(ids) => <input {...ids} name="title" maxLength={120} required autoComplete="off" />}
              </Field>
            </SaidForm>
          </Panel>
        )}
      </main>
    </>
  );
}
