import type { Metadata } from "next";
import { Header } from "@/components/shell";
import { Field, page, Panel, SaidForm } from "@/components/ui";
import { isOverdue, lastBackup, nightlyPlan, type NightlyPlan } from "@/lib/backup";
import { dataDir } from "@/lib/db";
import { currentSite } from "@/lib/sites";
import { pageFor } from "../_door/here";
import { backUpNowAction, nightlyOffAction, nightlyOnAction } from "./actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Backups" };

const momentText = (at: string): string => `${at.slice(0, 16).replace("T", " ")} UTC`;

export default async function BackupsPage() {
  const { db } = await pageFor("data.keep");
  const [last, plan] = await Promise.all([lastBackup(db), nightlyPlan(db)]);
  const goodAt = last?.goodAt ?? null;
  const overdue = plan && isOverdue(new Date(), goodAt ? new Date(goodAt) : null, new Date(plan.since));
  return (
    <>
      <Header />
      <main className={`${page.page} ${page.narrow}`}>
        <h1>Backups</h1>
        <p className={overdue || !goodAt ? page.alert : page.notice} role={overdue ? "alert" : undefined}>
          {goodAt
            ? `Last good backup: ${momentText(goodAt)}, in ${last?.folder}.`
            : "There is no backup yet of what lies here."}
          {overdue && " The nightly one has not come about for two nights."}
        </p>
        {last && last.triedAt !== goodAt && (
          <p className={page.alert}>
            Tried {momentText(last.triedAt)}: {last.said}
          </p>
        )}
        <Panel title="Back up now" tone="straw">
          <p>
            Copies database, photos and keys while everybody works on, and verifies the copy whole. Best onto
            another disk. Deleted beads stay in copies made before they went.
          </p>
          <SaidForm action={backUpNowAction} submit="Back up now">
            <FolderField value={last?.folder ? last.folder.replace(/\/[^/]*$/, "") : ownFolder()} />
          </SaidForm>
        </Panel>
        <NightlyPanel plan={plan} />
        <Panel title="Bring one back" tone="purple">
          <p>
            On the machine itself, into an empty folder. It is verified whole before anybody can open it, and
            what lies here is not touched:
          </p>
          <p className={page.mono}>TOELINE_DATA=/path/to/empty npm run -s restore -- /the/backup</p>
          <p className={page.note}>
            The data folder in use is {dataDir()}. Whoever has a backup has the photos, the names and the key
            that signs for this installation: keep it as you keep the machine.
          </p>
        </Panel>
      </main>
    </>
  );
}

/** Where several sites are served each has one folder for backups; else nobody but the owner knows a good one. */
const ownFolder = (): string => currentSite()?.backups ?? "";

function FolderField({ value }: { value: string }) {
  return (
    <Field label="Folder for backups" hint="From the root on, such as /mnt/usb/toeline">
      {(ids) => (
        <input {...ids} name="folder" defaultValue={value} autoComplete="off" maxLength={400} required />
      )}
    </Field>
  );
}

function NightlyPanel({ plan }: { plan: NightlyPlan | null }) {
  return (
    <Panel title={plan ? "Every night: on" : "Every night: off"} tone="blue">
      <SaidForm action={nightlyOnAction} submit={plan ? "Change" : "Switch on"}>
        <FolderField value={plan?.folder ?? ownFolder()} />
        <Field label="Copies to keep" hint="Photos that did not change are on the disk once.">
          {(ids) => (
            <input {...ids} name="keep" type="number" min={1} max={60} defaultValue={plan?.keep ?? 7} />
          )}
        </Field>
        <Field label="Hour of the day" hint="0 to 23, by this machine's clock">
          {(ids) => (
            <input {...ids} name="hour" type="number" min={0} max={23} defaultValue={plan?.hour ?? 1} />
          )}
        </Field>
      </SaidForm>
      {plan && <SaidForm action={nightlyOffAction} submit="Switch off" tone="plain" />}
    </Panel>
  );
}
