/** How beads were listed, filtered and counted before their facts were kept: the second way the tests count by. */
import { assessBead, type AssessContext, type Assessed, type Outcome } from "@/lib/assess";
import type { BeadRecord } from "@/lib/beads";
import type { Db } from "@/lib/db";
import { UNKNOWN, type BeadFilter } from "@/lib/find";
import { filterableFields, filterName } from "@/lib/setup";
import { assessContext } from "@/lib/shop";
import { listBeads } from "../../setup/stored-beads";
import { imperfections, type ImperfectionId, type Joint, type Position, type Process } from "@/lib/trade";

type VerdictWord = "accept" | "reject" | "cannot-say";

/** A stored bead with what lists and trends ask of it. It fits the `BeadObservation` of lib/trends. */
export interface ObservedBead {
  readonly beadId: string;
  /** Calendar day in UTC. */
  readonly day: string;
  /** Identification or name of the person; where none is kept, what stands on the sheet. */
  readonly welder: string | null;
  readonly process: Process | null;
  readonly electrodeClass: string | null;
  readonly joint: Joint | null;
  readonly position: Position | null;
  readonly imperfections: readonly ImperfectionId[];
  /** Worked out when it is first asked for: judging is the dear part. */
  readonly verdict: VerdictWord | null;
  readonly confirmedCause: string | null;
  readonly outcome: Outcome | null;
  /** Lower case: everything written about the bead that words can be looked for in. */
  readonly words: string;
  readonly bead: BeadRecord;
  /** Worked out when it is first asked for, and once. */
  readonly assessed: Assessed<BeadRecord>;
}

function verdictOf(bead: BeadRecord, assessed: () => Assessed<BeadRecord>): VerdictWord | null {
  if (bead.content.judgement.criteriaId === null) return null;
  const { verdict } = assessed().assessment;
  return verdict?.ok ? verdict.value.verdict : null;
}

/** Cause by bead: the bead a change was tried after has the cause when the bead with the change was cured. */
export function confirmedCauses(beads: readonly BeadRecord[]): ReadonlyMap<string, string> {
  const causes = new Map<string, string>();
  // Newest first: an older try's answer stands.
  for (const { previous, content } of beads) {
    const { tried, outcome } = content.judgement;
    if (previous && tried && outcome === "cured") causes.set(previous.id, tried.causeId);
  }
  return causes;
}

/** Words by which people are known, by person id. */
async function labelsOf(db: Db): Promise<ReadonlyMap<string, string>> {
  const rows = await db.person.findMany({ select: { id: true, name: true, mark: true } });
  return new Map(
    rows.flatMap(({ id, name, mark }) => {
      const label = mark ?? name;
      return label === null ? [] : [[id, label] as const];
    }),
  );
}

function wordsOf({ number, content }: BeadRecord, welder: string | null): string {
  const { title, setup, judgement, photos } = content;
  const marks = photos.flatMap(({ drawing }) => drawing.marks);
  return [
    `#${number}`,
    title,
    welder,
    content.welder,
    judgement.note,
    judgement.criteriaId,
    judgement.tried?.sentence,
    judgement.tried?.causeId,
    ...Object.values(setup).filter((value) => typeof value === "string"),
    ...judgement.readings.map(({ instrument }) => instrument),
    ...marks.flatMap(({ imperfection, note }) => [imperfections[imperfection].name, note]),
  ]
    .filter(Boolean)
    .join("\n")
    .normalize("NFKC")
    .toLowerCase();
}

function once<T>(work: () => T): () => T {
  let kept: { readonly value: T } | null = null;
  return () => (kept ??= { value: work() }).value;
}

/** Every bead of a list as an observation, in its order. `all` is what causes are confirmed from. */
export async function observeBeads(
  db: Db,
  beads: readonly BeadRecord[],
  context: AssessContext,
): Promise<readonly ObservedBead[]> {
  const [labels, causes] = [await labelsOf(db), confirmedCauses(beads)];
  return beads.map((bead): ObservedBead => {
    const assessed = once(() => assessBead(bead, context));
    const { setup, judgement, photos } = bead.content;
    const welder = (bead.welderId && labels.get(bead.welderId)) || bead.content.welder;
    return {
      beadId: bead.id,
      day: bead.createdAt.slice(0, 10),
      welder,
      process: setup.process,
      electrodeClass: setup.electrodeClass,
      joint: setup.joint,
      position: setup.position,
      imperfections: photos.flatMap(({ drawing }) => drawing.marks.map((mark) => mark.imperfection)),
      get verdict() {
        return verdictOf(bead, assessed);
      },
      confirmedCause: causes.get(bead.id) ?? null,
      outcome: judgement.outcome,
      words: wordsOf(bead, welder),
      bead,
      get assessed() {
        return assessed();
      },
    };
  });
}

const fits = (asked: string | undefined, value: string | null): boolean =>
  asked === undefined || (asked === UNKNOWN ? value === null : value === asked);

function fitsVerdict(asked: BeadFilter["verdict"], one: ObservedBead): boolean {
  if (asked === undefined) return true;
  if (asked === "none") return one.verdict === null;
  return asked === "decided" ? one.verdict === "accept" || one.verdict === "reject" : one.verdict === asked;
}

function fitsThickness({ minThickness, maxThickness }: BeadFilter, value: number | null): boolean {
  if (minThickness === undefined && maxThickness === undefined) return true;
  return value !== null && value >= (minThickness ?? 0) && value <= (maxThickness ?? Infinity);
}

/** Whether a bead fits everything asked. */
export function fitsFilter(filter: BeadFilter, one: ObservedBead): boolean {
  const { setup, judgement } = one.bead.content;
  const words = (filter.q ?? "").normalize("NFKC").toLowerCase().split(/\s+/).filter(Boolean);
  return (
    (filter.id === undefined || filter.id.includes(one.beadId)) &&
    words.every((word) => one.words.includes(word)) &&
    fits(filter.welder, one.welder) &&
    fits(filter.person, one.bead.welderId) &&
    filterableFields.every((field) => fits(filter[filterName(field)], setup[field])) &&
    fitsThickness(filter, setup.thicknessMm) &&
    (filter.imperfection === undefined || one.imperfections.includes(filter.imperfection)) &&
    (filter.anyOf === undefined || filter.anyOf.some((id) => one.imperfections.includes(id))) &&
    (filter.anyCause === undefined || filter.anyCause.some((id) => one.confirmedCause === id)) &&
    fits(filter.cause, one.confirmedCause) &&
    fits(filter.criteria, judgement.criteriaId) &&
    fits(filter.outcome, one.outcome) &&
    (filter.photo === undefined || (filter.photo === "yes") === one.bead.photos.length > 0) &&
    (filter.from === undefined || one.day >= filter.from) &&
    (filter.to === undefined || one.day <= filter.to) &&
    fits(filter.job, one.bead.jobId) &&
    // Last, because a verdict has to be worked out.
    fitsVerdict(filter.verdict, one)
  );
}

const compareText = (a: string, b: string): number => a.localeCompare(b, "en");
const older = (a: ObservedBead, b: ObservedBead): number =>
  compareText(a.bead.createdAt, b.bead.createdAt) || a.bead.number - b.bead.number;
const welderKey = ({ welder }: ObservedBead): string => welder ?? "\uffff";
/** The list comes newest first, and sorting keeps that order among equals; downwards is the same from its other end. */
const orders: Record<
  NonNullable<BeadFilter["sort"]>,
  ((a: ObservedBead, b: ObservedBead) => number) | null
> = {
  newest: null,
  oldest: older,
  number: (a, b) => a.bead.number - b.bead.number,
  title: (a, b) => compareText(a.bead.content.title, b.bead.content.title),
  welder: (a, b) => compareText(welderKey(a), welderKey(b)),
  "number-down": (a, b) => b.bead.number - a.bead.number,
  "title-down": (a, b) => compareText(b.bead.content.title, a.bead.content.title) || older(a, b),
  "welder-down": (a, b) => compareText(welderKey(b), welderKey(a)) || older(a, b),
};

/** Every bead as it stands now, newest first: read and assessed, and nothing of it from the kept facts. */
export async function observeAll(db: Db): Promise<readonly ObservedBead[]> {
  return observeBeads(db, await listBeads(db), await assessContext(db));
}

/** The beads that fit, the slow way. A cause is confirmed by whoever ran the next bead, also for a person who sees their own alone. */
export function findByHand(
  all: readonly ObservedBead[],
  filter: BeadFilter,
  only: { readonly welderId?: string } = {},
): readonly ObservedBead[] {
  const own = all.filter(({ bead }) => !only.welderId || bead.welderId === only.welderId);
  const found = own.filter((one) => fitsFilter(filter, one));
  const order = orders[filter.sort ?? "newest"];
  return order ? found.toSorted(order) : found;
}
