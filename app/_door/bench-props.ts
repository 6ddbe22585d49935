import type { Gauge } from "@/components/canvas";
import type { BenchGauge } from "@/components/inspect";
import { calibrationDoubt, canBeStudied, instrumentLabel } from "@/lib/inspect";
import { listInstruments, studiesForReadings } from "@/lib/jobs";
import { lastSetup, listSavedSetups, shopCounts, shopSetsToChoose } from "@/lib/shop";
import type { Db } from "@/lib/db";
import { personIdOf } from "@/lib/people";
import { currentUnits } from "./current-units";
import { ownOnly, type Here } from "./here";

/** The step of a gauge that nobody wrote down, mm: that of a leg gauge (common practice, no source). */
const USUAL_STEP_MM = 0.5;

async function shopGauges(db: Db): Promise<Gauge[]> {
  const today = new Date().toISOString().slice(0, 10);
  const studies = await studiesForReadings(db, today);
  return (await listInstruments(db))
    .filter(({ content, retiredAt }) => retiredAt === null && canBeStudied(content.kind))
    .map(({ id, content }) => ({
      name: instrumentLabel(content),
      resolution: content.resolution ?? USUAL_STEP_MM,
      doubt: calibrationDoubt(content, today),
      study: studies.get(id) ?? null,
    }));
}

/** Gauges to read a weld with at an inspection: those it ticked; where it ticked none, all that are in use. */
export async function benchGauges(db: Db, ticked: readonly string[]): Promise<BenchGauge[]> {
  const today = new Date().toISOString().slice(0, 10);
  const all = (await listInstruments(db)).filter(({ content }) => canBeStudied(content.kind));
  const own = all.filter(({ id }) => ticked.includes(id));
  const studies = await studiesForReadings(db, today);
  const usable = own.length > 0 ? own : all.filter(({ retiredAt }) => retiredAt === null);
  return usable.map(({ id, content }) => ({
    name: instrumentLabel(content),
    kind: content.kind,
    resolution: content.resolution ?? USUAL_STEP_MM,
    doubt: calibrationDoubt(content, today),
    study: studies.get(id) ?? null,
  }));
}

/** What a workbench needs beside its bead: units, set-ups to start from, what the shop knows. `beadId` null: a new one. */
export async function benchProps(
  { db, actor }: Here,
  beadId: string | null,
  criteriaIds: readonly (string | null)[],
) {
  const [units, savedSetups, last, counts, gauges, sets] = await Promise.all([
    currentUnits(),
    listSavedSetups(db, personIdOf(actor)),
    lastSetup(db, beadId ?? "", ownOnly(actor)),
    shopCounts(db),
    shopGauges(db),
    shopSetsToChoose(db, criteriaIds),
  ]);
  return { units, savedSetups, lastSetup: last, shop: { counts, sets, gauges } };
}
