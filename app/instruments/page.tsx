import type { Metadata } from "next";
import { InstrumentFields } from "@/components/inspect";
import { Header } from "@/components/shell";
import { page, Panel, SaidForm } from "@/components/ui";
import { calibrationOn, instrumentNames } from "@/lib/inspect";
import { listInstruments } from "@/lib/jobs";
import { pageFor } from "../_door/here";
import { addInstrumentAction, changeInstrumentAction, retireInstrumentAction } from "./actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Instruments" };

export default async function InstrumentsPage() {
  const now = await pageFor("job.read");
  const instruments = await listInstruments(now.db);
  const today = new Date().toISOString().slice(0, 10);
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
