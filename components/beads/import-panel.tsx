"use client";

import { FileUp } from "lucide-react";
import Link from "next/link";
import { useState } from "react";
import { Button, buttonClass, form, page, Panel } from "@/components/ui";
import { ok, refused, type Answer, type Line } from "@/lib/base";
import styles from "./import-panel.module.css";

interface PlannedBead {
  readonly id: string;
  readonly title: string;
  readonly fate: "new" | "same" | "differs" | "photo-taken";
  readonly ownNumber: number;
  readonly number: number;
  readonly photos: number;
  readonly revision: number;
  readonly revisionHere: number | null;
}
interface PlannedJob {
  readonly id: string;
  readonly title: string;
  readonly fate: "new" | "same" | "differs";
  readonly ownNumber: number;
  readonly number: number;
  readonly inspections: number;
}
interface PlannedSeries {
  readonly kind: "trial" | "card";
  readonly id: string;
  readonly title: string;
  readonly fate: "new" | "same" | "differs";
  readonly ownNumber: number;
  readonly number: number;
}
interface Plan {
  readonly done: boolean;
  readonly beads: readonly PlannedBead[];
  readonly criteria: readonly { readonly id: string; readonly title: string; readonly fate: string }[];
  readonly jobs: readonly PlannedJob[];
  readonly series: readonly PlannedSeries[];
  readonly fresh: number;
  readonly same: number;
  readonly conflicts: number;
  readonly renumbered: number;
  readonly otherTables: boolean;
}
async function send(file: File, query: string): Promise<Answer<Plan>> {
  try {
    const answer = await fetch(`/api/import${query}`, { method: "POST", body: file });
    const json = (await answer.json()) as Plan & { issues?: readonly Line[] };
    return answer.ok ? ok(json) : { ok: false, issues: json.issues ?? [] };
  } catch {
    return refused(
      "unreachable",
      "The server did not answer; nothing was imported. Check that it runs, then try again.",
    );
  }
}

/** Chooses an archive, shows what importing it would do, and does it when that is wanted. */
export function ImportPanel() {
  const [file, setFile] = useState<File | null>(null);
  const [answer, setAnswer] = useState<Answer<Plan> | null>(null);
  const [working, setWorking] = useState(false);
  const ask = async (chosen: File, query: string): Promise<void> => {
    setWorking(true);
    setAnswer(await send(chosen, query));
    setWorking(false);
  };
  const look = (chosen: File) => {
    setFile(chosen);
    void ask(chosen, "?check=yes");
  };
  const plan = answer?.ok ? answer.value : null;
  return (
    <Panel title="An archive from another machine" tone="blue">
      <ChooseFile working={working} onChoose={look} />
      <p className={page.note}>It is checked first and nothing is written until you say so.</p>
      <div aria-live="polite" className={styles.answer}>
        {answer && !answer.ok && (
          <ul className={`${form.said} ${form.refused} ${styles.lines}`}>
            {answer.issues.map(({ message }) => (
              <li key={message}>{message}</li>
            ))}
          </ul>
        )}
        {plan && <PlanView plan={plan} />}
      </div>
      {plan && file && mayImport(plan) && (
        <Button
          tone="main"
          disabled={working}
          onClick={() => void ask(file, plan.conflicts > 0 ? "?conflicts=leave" : "")}
        >
          {plan.conflicts > 0
            ? `Import ${newWords(plan)}, leave the other ${plan.conflicts} as here`
            : `Import ${newWords(plan)}`}
        </Button>
      )}
    </Panel>
  );
}

function ChooseFile({ working, onChoose }: { working: boolean; onChoose: (file: File) => void }) {
  return (
    <label className={buttonClass("main", "large", styles.choose)}>
      <FileUp size={24} aria-hidden="true" /> {working ? "Looking into it …" : "Choose an archive"}
      <input
        type="file"
        accept=".zip,application/zip"
        className="visually-hidden"
        disabled={working}
        onChange={({ target }) => {
          const chosen = target.files?.[0];
          // The same file again is a choice as well.
          target.value = "";
          if (chosen) onChoose(chosen);
        }}
      />
    </label>
  );
}

const beadWord = (count: number): string => (count === 1 ? "1 bead" : `${count} beads`);

/** "2 beads", "1 job": what is new of each kind, kinds without any left out. */
function newKinds({ fresh, jobs, series }: Plan): readonly string[] {
  const isNew = ({ fate }: { readonly fate: string }): boolean => fate === "new";
  const counts = [
    [fresh, "bead"],
    [jobs.filter(isNew).length, "job"],
    [series.filter((one) => one.kind === "trial" && isNew(one)).length, "trial"],
    [series.filter((one) => one.kind === "card" && isNew(one)).length, "card"],
  ] as const;
  return counts.flatMap(([count, one]) => (count === 0 ? [] : [`${count} ${count === 1 ? one : `${one}s`}`]));
}
const somethingNew = (plan: Plan): boolean => newKinds(plan).length > 0;
const mayImport = (plan: Plan): boolean =>
  !plan.done && somethingNew(plan) && plan.criteria.every(({ fate }) => fate !== "differs");

/** "2 beads, 1 job and 1 card" */
function newWords(plan: Plan): string {
  const kinds = newKinds(plan);
  return [kinds.slice(0, -1).join(", "), ...kinds.slice(-1)].filter(Boolean).join(" and ");
}

function seriesFate({ fate, number, ownNumber }: PlannedSeries): string {
  if (fate === "differs") return "is here with other content: left as here";
  if (fate === "same") return "is here already, exactly so";
  return `is new${number === ownNumber ? "" : `; its number is taken here, so it becomes ${number}`}`;
}

function jobFate({ fate, number, ownNumber, inspections }: PlannedJob): string {
  if (fate === "differs") return "is here with other content: left as here";
  if (fate === "same") return "is here already, exactly so";
  const records = inspections === 1 ? "1 inspection" : `${inspections} inspections`;
  return `is new, with ${records}${number === ownNumber ? "" : `; its number is taken here, so it becomes ${number}`}`;
}

function summaryOf({ done, fresh, same, conflicts }: Plan): string {
  const parts = [
    done ? `${beadWord(fresh)} imported` : `${beadWord(fresh)} would be new`,
    same > 0 && `${same} here already, exactly so`,
    conflicts > 0 && `${conflicts} here with other content, left as here`,
  ];
  return `${parts.filter(Boolean).join("; ")}.`;
}

function fateOf({ fate, number, ownNumber, revision, revisionHere }: PlannedBead): string {
  if (fate === "same") return "Here already, exactly so";
  if (fate === "differs")
    return `Here with other content (revision ${revisionHere} here, ${revision} in the archive): left as here`;
  if (fate === "photo-taken") return "A photo's id belongs to another bead here: left out";
  return number === ownNumber ? "New" : `New; number ${ownNumber} is taken here, so it becomes ${number}`;
}

function PlanView({ plan }: { plan: Plan }) {
  return (
    <>
      <p className={form.said}>{summaryOf(plan)}</p>
      {plan.criteria
        .filter(({ fate }) => fate !== "same")
        .map(({ id, title, fate }) => (
          <p key={id} className={fate === "differs" ? `${form.said} ${form.refused}` : page.note}>
            {fate === "differs"
              ? `The limits “${title}” (${id}) are here with other content, so this archive cannot be imported.`
              : `The limits “${title}” (${id}) ${plan.done ? "came" : "would come"} along.`}
          </p>
        ))}
      {plan.jobs.map((job) => (
        <p key={job.id} className={job.fate === "differs" ? `${form.said} ${form.refused}` : page.note}>
          Job {job.ownNumber}{" "}
          {plan.done && job.fate !== "differs" ? (
            <Link href={`/jobs/${job.id}`}>{job.title}</Link>
          ) : (
            `“${job.title}”`
          )}{" "}
          {jobFate(job)}.
        </p>
      ))}
      {plan.series.map((one) => (
        <p key={one.id} className={one.fate === "differs" ? `${form.said} ${form.refused}` : page.note}>
          {one.kind === "trial" ? "Trial" : "Card"} {one.ownNumber}{" "}
          {plan.done && one.fate !== "differs" ? (
            <Link href={`/${one.kind}s/${one.id}`}>{one.title}</Link>
          ) : (
            `“${one.title}”`
          )}{" "}
          {seriesFate(one)}.
        </p>
      ))}
      {plan.otherTables && (
        <p className={page.note}>
          The archive was made with other tables of limits than this version carries: a verdict may read
          differently here.
        </p>
      )}
      <div className={page.scroll} role="region" aria-label="Beads of the archive" tabIndex={0}>
        <table className={page.table}>
          <thead>
            <tr>
              <th scope="col">Bead</th>
              <th scope="col">Title</th>
              <th scope="col">Photos</th>
              <th scope="col">{plan.done ? "What became of it" : "What would become of it"}</th>
            </tr>
          </thead>
          <tbody>
            {plan.beads.map((bead) => (
              <tr key={bead.id}>
                <td>{bead.number}</td>
                <td>
                  {plan.done && bead.fate !== "photo-taken" ? (
                    <Link href={`/beads/${bead.id}`}>{bead.title}</Link>
                  ) : (
                    bead.title
                  )}
                </td>
                <td>{bead.photos}</td>
                <td>{fateOf(bead)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}
