import type { Metadata } from "next";
import Link from "next/link";
import { VerifyPanel, actionText, detailPhrases, logSubject, type LogSubject } from "@/components/log";
import { Header } from "@/components/shell";
import { buttonClass, page } from "@/components/ui";
import { numbersOfBeads } from "@/lib/beads";
import { personNames } from "@/lib/roster";
import { newestEntries } from "@/lib/store";
import { pageFor } from "../_door/here";
import { entryNumber } from "./entry-number";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Log" };

const AT_ONCE = 50;

interface Props {
  searchParams: Promise<{ before?: string }>;
}

export default async function LogPage({ searchParams }: Props) {
  const now = await pageFor("log.read");
  const [entries, names] = await Promise.all([
    newestEntries(now.db, AT_ONCE, entryNumber((await searchParams).before)),
    personNames(now.db),
  ]);
  const beadNumbers = await numbersOfBeads(
    now.db,
    entries.flatMap(({ subject }) => (subject.startsWith("bead:") ? [subject.slice("bead:".length)] : [])),
  );
  const oldest = entries.at(-1)?.seq ?? 1;
  return (
    <>
      <Header />
      <main className={page.page}>
        <h1>Log</h1>
        <p className={page.note}>
          Every change is entered here and never altered: each entry is sealed together with the seal of the
          one before, so a change made behind the program&apos;s back shows.
        </p>
        <VerifyPanel />
        <div className={page.scroll} tabIndex={0} role="region" aria-label="Log entries">
          <table className={`${page.table} ${page.stacked}`}>
            <thead>
              <tr>
                <th scope="col">No.</th>
                <th scope="col">When (UTC)</th>
                <th scope="col">Who</th>
                <th scope="col">What</th>
                <th scope="col">To</th>
                <th scope="col">More</th>
                <th scope="col">Seal</th>
              </tr>
            </thead>
            <tbody>
              {entries.map((entry) => (
                <tr key={entry.seq} id={`entry-${entry.seq}`}>
                  <td data-head="No.">{entry.seq}</td>
                  <td data-head="When (UTC)" className={page.time}>
                    {entry.at.slice(0, 19).replace("T", " ")}
                  </td>
                  <td data-head="Who">{whoText(entry.by, names)}</td>
                  <td data-head="What">{actionText(entry.action)}</td>
                  <td data-head="To" className={page.wraps}>
                    <Subject of={logSubject(entry.subject)} beadNumbers={beadNumbers} />
                  </td>
                  <td data-head="More">{detailPhrases(entry.detail).join("; ")}</td>
                  <td data-head="Seal" className={page.mono} title={entry.hash}>
                    {entry.hash.slice(0, 12)}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
        {oldest > 1 && (
          <Link className={buttonClass("plain")} href={`/log?before=${oldest}`}>
            Older entries
          </Link>
        )}
      </main>
    </>
  );
}

function Subject({ of, beadNumbers }: { of: LogSubject; beadNumbers: ReadonlyMap<string, number> }) {
  const number = beadNumbers.get(of.id);
  // What is gone has no page any more; its id stays, because the seal holds it.
  const name = of.kind === "Bead" && number !== undefined ? `Bead ${number}` : `${of.kind} ${of.id}`;
  const gone = of.kind === "Bead" && number === undefined;
  return of.href && !gone ? (
    <Link className={page.cellLink} href={of.href} title={of.id}>
      {name}
    </Link>
  ) : (
    name
  );
}

function whoText(by: string, names: ReadonlyMap<string, string>): string {
  if (by === "owner") return "Owner, at this machine";
  if (by === "system") return "Toeline itself";
  const [kind, id = ""] = by.split(":");
  if (kind === "person") return names.get(id) ?? "A removed person";
  return kind === "hand-in" ? "By hand-in address" : by;
}
