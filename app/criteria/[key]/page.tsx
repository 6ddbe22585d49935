import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { currentUnits } from "@/app/_door/current-units";
import { ownOnly, pageFor } from "@/app/_door/here";
import { ShopEditor, draftOf, ShopLimits, Versions } from "@/components/criteria";
import { Header, UnitSwitch } from "@/components/shell";
import { page, Panel, SaidForm } from "@/components/ui";
import { chooseUnitsAction } from "@/app/beads/actions";
import { listShopSets, newestVersions } from "@/lib/shop";
import { readShopSetAction, saveShopSetAction, tryShopSetAction, withdrawShopSetAction } from "../actions";
import { beadsToTry } from "../beads-to-try";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Limits of the shop" };

interface Props {
  params: Promise<{ key: string }>;
  searchParams: Promise<{ version?: string }>;
}

/** One set of the shop's own: the newest version to change, or any version to read (`?version=`). */
export default async function ShopSetPage({ params, searchParams }: Props) {
  const now = await pageFor("bead.read");
  const { key } = await params;
  const asked = (await searchParams).version;
  const versions = await listShopSets(now.db, { key });
  const [newest] = newestVersions(versions);
  const shown = asked === undefined ? newest : versions.find(({ version }) => String(version) === asked);
  if (!newest || !shown) notFound();
  const units = await currentUnits();
  const writes = now.may("criteria.write");
  const edits = writes && asked === undefined;
  return (
    <>
      <Header>
        <Link href="/criteria">All criteria</Link>
        <UnitSwitch choice={units.choice} onChoose={chooseUnitsAction} />
      </Header>
      <main className={page.page}>
        <h1>
          {shown.content.title}, version {shown.version}
        </h1>
        <p>
          The shop’s own limits, not a code: where a code, a contract or local rules ask for more, those
          govern.
          {newest.withdrawnAt !== null && " Withdrawn: no choice offers it any more."}
        </p>
        <Panel title="Versions" tone="blue">
          <p>A bead, exercise or job that was given a version keeps it.</p>
          <Versions versions={versions} shown={asked === undefined ? null : shown.version} />
          {writes && (
            <SaidForm
              action={withdrawShopSetAction.bind(null, key, newest.withdrawnAt === null)}
              submit={newest.withdrawnAt === null ? "Withdraw from every choice" : "Offer again"}
              tone="plain"
            />
          )}
        </Panel>
        {!edits && (
          <Panel title={`What version ${shown.version} says`} tone="straw">
            <ShopLimits set={shown.content} units={units.preferences} />
            {writes && asked !== undefined && <Link href={`/criteria/${key}`}>Change these limits</Link>}
          </Panel>
        )}
        {edits && (
          <ShopEditor
            start={draftOf(shown.content)}
            revision={newest.version}
            save={saveShopSetAction.bind(null, key)}
            readStored={readShopSetAction.bind(null, key)}
            tryOn={tryShopSetAction}
            beads={await beadsToTry(now.db, ownOnly(now.actor))}
            units={units.preferences}
          />
        )}
      </main>
    </>
  );
}
