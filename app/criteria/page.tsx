import type { Metadata } from "next";
import Link from "next/link";
import { CodeSet, ShopLimits, Versions } from "@/components/criteria";
import { Header } from "@/components/shell";
import { buttonClass, page, Panel } from "@/components/ui";
import { listCriteria } from "@/lib/accept";
import { listShopSets, newestVersions } from "@/lib/shop";
import { currentUnits } from "../_door/current-units";
import { pageFor } from "../_door/here";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Criteria" };

/** Everything a bead can be judged by: the shop's own limits, then what comes with the program. */
export default async function CriteriaPage() {
  const now = await pageFor("bead.read");
  const [sets, units] = await Promise.all([listShopSets(now.db), currentUnits()]);
  const writes = now.may("criteria.write");
  return (
    <>
      <Header />
      <main className={page.page}>
        <h1>Criteria</h1>
        <p>
          Which of these applies is said by the governing code, the contract and the procedure. Acceptance is
          for qualified people.
        </p>
        <h2>The shop’s own limits, not a code</h2>
        {writes && (
          <div>
            <Link href="/criteria/new" className={buttonClass("main", "large")}>
              Write limits
            </Link>
          </div>
        )}
        {sets.length === 0 && (
          <p className={page.note}>None yet. An exercise or a contract may need its own.</p>
        )}
        {newestVersions(sets).map((set) => (
          <Panel
            key={set.key}
            title={`${set.content.title}, version ${set.version}`}
            tone={set.withdrawnAt === null ? "straw" : "plain"}
          >
            {set.withdrawnAt !== null && <p>Withdrawn: no choice offers it any more.</p>}
            <ShopLimits set={set.content} units={units.preferences} />
            <Versions versions={sets.filter(({ key }) => key === set.key)} shown={null} />
            {writes && (
              <div>
                <Link href={`/criteria/${set.key}`} className={buttonClass()}>
                  Change or withdraw
                </Link>
              </div>
            )}
          </Panel>
        ))}
        <h2>Standards and codes</h2>
        <p className={page.note}>
          Limits in mm; t thickness of the plate, s nominal thickness of a butt weld, a throat and z leg asked
          for, b width of the face, L length of the weld. Figures marked “check your copy” rest on memory or
          an older edition.
        </p>
        {listCriteria().map((set) => (
          <CodeSet key={set.id} set={set} copies={writes} />
        ))}
      </main>
    </>
  );
}
