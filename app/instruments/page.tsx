import type { Metadata } from "next";
import Link from "next/link";
import { InstrumentFields } from "@/components/inspect";
import { Header } from "@/components/shell";
import { buttonClass, page, Panel, SaidForm } from "@/components/ui";
import { calibrationOn, canBeStudied, instrumentNames } from "@/lib/inspect";
import type { ReadingStudy } from "@/lib/gauge";
import { listInstruments, studiesForReadings } from "@/lib/jobs";
import { pageFor } from "../_door/here";
import { addInstrumentAction, changeInstrumentAction, retireInstrumentAction } from "./actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Instruments" };

export default async function InstrumentsPage() {
  const now = await pageFor("job.read");
  const instruments = await listInstruments(now.db);
  const today = new Date().toISOString().slice(0, 10);
  const studies = await studiesForReadings(now.db, today);
  const writes = now.may("job.write");
  return (
    <>
      <Header />
      <main className={page.page}>
        <h1>Instruments</h1>
        {instruments.length === 0 && <p className={page.note}>None yet. A record names what was used.</p>}
        {instruments.map(({ id, content, retiredAt }) => {
          const isOverdue = calibrationOn(content, today) === "overdue";
          return (
            <Panel key={id} title={content.name} tone={isOverdue && !retiredAt ? "danger" : "blue"}>
              <p>
                {instrumentNames[content.kind]}, serial {content.serial || "not recorded"}.{" "}
                {isOverdue ? <strong>Calibration was due on {content.dueOn}.</strong> : null}
                {!isOverdue && content.dueOn ? `Calibration due ${content.dueOn}.` : null}
                {retiredAt ? " Out of use." : ""}
              </p>
              {canBeStudied(content.kind) && (
                <p>
                  <Link className={buttonClass()} href={`/instruments/${id}`}>
                    {studyLine(studies.get(id) ?? null)}
                  </Link>
                </p>
              )}
              {writes && (
                <details className={page.details}>
                  <summary>Change</summary>
                  <SaidForm action={changeInstrumentAction.bind(null, id)} submit="Save" tone="plain">
                    <InstrumentFields start={content} />
                  </SaidForm>
                  <SaidForm
                    action={retireInstrumentAction.bind(null, id, retiredAt === null)}
                    submit={retiredAt === null ? "Take out of use" : "Use again"}
                    tone="plain"
                  />
                </details>
              )}
            </Panel>
          );
        })}
        {writes && (
          <Panel title="Add an instrument" tone="straw">
            <SaidForm action={addInstrumentAction} submit="Add">
              <InstrumentFields />
            </SaidForm>
          </Panel>
        )}
      </main>
    </>
  );
}

const studyLine = (study: ReadingStudy | null): string =>
  study === null
    ? "Studies: none that counts for readings"
    : `Studies: that of ${study.on} counts for readings`;
