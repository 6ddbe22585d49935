import type { Metadata } from "next";
import Link from "next/link";
import { currentUnits } from "@/app/_door/current-units";
import { ownOnly, pageFor } from "@/app/_door/here";
import { CriteriaOptions, ShopEditor, draftOf, emptyDraft, type ShopDraft } from "@/components/criteria";
import { Header, UnitSwitch } from "@/components/shell";
import { buttonClass, Field, form, page, Panel } from "@/components/ui";
import { chooseUnitsAction } from "@/app/beads/actions";
import { listCriteria, shopRowsFrom, weldKinds, type ShopCriteria, type WeldKind } from "@/lib/accept";
import { getShopSet, shopSetsToChoose } from "@/lib/shop";
import { parseLength, type UnitPreferences } from "@/lib/units";
import type { Db } from "@/lib/db";
import { createShopSetAction, tryShopSetAction } from "../actions";
import { beadsToTry } from "../beads-to-try";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Write limits" };

interface Asked {
  readonly from?: string;
  readonly kind?: string;
  readonly thickness?: string;
}

/** New limits of the shop's own, from nothing or from a copy. */
export default async function NewShopSetPage({ searchParams }: { searchParams: Promise<Asked> }) {
  const now = await pageFor("criteria.write");
  const asked = await searchParams;
  const units = await currentUnits();
  const [sets, beads, start] = await Promise.all([
    shopSetsToChoose(now.db),
    beadsToTry(now.db, ownOnly(now.actor)),
    startFrom(now.db, asked, units.preferences),
  ]);
  return (
    <>
      <Header>
        <Link href="/criteria">All criteria</Link>
        <UnitSwitch choice={units.choice} onChoose={chooseUnitsAction} />
      </Header>
      <main className={page.page}>
        <h1>Write limits</h1>
        <StartForm asked={asked} sets={sets} units={units.preferences} problem={start.problem} />
        <ShopEditor
          key={JSON.stringify(asked)}
          start={start.draft}
          revision={0}
          readStored={null}
          save={createShopSetAction}
          tryOn={tryShopSetAction}
          beads={beads}
          units={units.preferences}
        />
      </main>
    </>
  );
}

function StartForm({
  asked,
  sets,
  units,
  problem,
}: {
  asked: Asked;
  sets: readonly ShopCriteria[];
  units: UnitPreferences;
  problem: string | undefined;
}) {
  return (
    <Panel title="Start from" tone="blue">
      <form className={form.form}>
        <Field
          label="Copy of"
          hint="The copy is the shop’s own and no code any more; the text of the code governs."
        >
          {(ids) => (
            <select {...ids} name="from" defaultValue={asked.from ?? ""}>
              <option value="">nothing: an empty list</option>
              <CriteriaOptions criteria={listCriteria(sets)} />
            </select>
          )}
        </Field>
        <Field label="Of a code, as it reads for">
          {(ids) => (
            <select {...ids} name="kind" defaultValue={kindOf(asked)}>
              {weldKinds.map((kind) => (
                <option key={kind} value={kind}>
                  {kind} welds
                </option>
              ))}
            </select>
          )}
        </Field>
        <Field
          label={`on plate of, ${units.length}`}
          hint="A code’s limits may follow the thickness."
          error={problem}
        >
          {(ids) => (
            <input {...ids} name="thickness" autoComplete="off" defaultValue={asked.thickness ?? ""} />
          )}
        </Field>
        <div className={form.row}>
          <button type="submit" className={buttonClass()}>
            Start from this
          </button>
        </div>
      </form>
    </Panel>
  );
}

const kindOf = ({ kind }: Asked): WeldKind => weldKinds.find((one) => one === kind) ?? "fillet";

interface Start {
  readonly draft: ShopDraft;
  readonly problem?: string;
}

async function startFrom(db: Db, asked: Asked, units: UnitPreferences): Promise<Start> {
  const nothing: Start = { draft: emptyDraft };
  if (!asked.from) return nothing;
  const own = await getShopSet(db, asked.from);
  if (own) {
    const draft = draftOf(own.content);
    return { draft: { ...draft, title: `${draft.title}, copy`.slice(0, 120) } };
  }
  const set = listCriteria().find(({ id }) => id === asked.from);
  if (!set) return nothing;
  const thickness = parseLength(asked.thickness ?? "", { default: units.length });
  if (!thickness.ok)
    return { ...nothing, problem: `Say for which thickness, then “${set.title}” is copied.` };
  const kind = kindOf(asked);
  const copy = shopRowsFrom(set.id, { kind, thicknessMm: thickness.value });
  if (!copy) return nothing;
  const note = `Started from ${set.title}, ${set.edition}, as it reads for ${kind} welds on ${asked.thickness?.trim()} ${units.length}. Now the shop's own: the text of the code governs.`;
  return { draft: { title: "", note, ...copy } };
}
