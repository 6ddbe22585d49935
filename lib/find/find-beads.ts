import type { AssessContext } from "@/lib/assess";
import { listBeads } from "@/lib/beads";
import type { Db } from "@/lib/db";
import { filterableFields, filterName } from "@/lib/setup";
import { assessContext } from "@/lib/shop";
import { UNKNOWN, type BeadFilter } from "./bead-filter";
import { observeBeads, type ObservedBead } from "./observations";

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
    filterableFields.every((field) => fits(filter[filterName(field)], setup[field])) &&
    fitsThickness(filter, setup.thicknessMm) &&
    (filter.imperfection === undefined || one.imperfections.includes(filter.imperfection)) &&
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
/** The list comes newest first, and sorting keeps that order among equals. */
const orders: Record<
  NonNullable<BeadFilter["sort"]>,
  ((a: ObservedBead, b: ObservedBead) => number) | null
> = {
  newest: null,
  oldest: (a, b) => compareText(a.bead.createdAt, b.bead.createdAt) || a.bead.number - b.bead.number,
  number: (a, b) => a.bead.number - b.bead.number,
  title: (a, b) => compareText(a.bead.content.title, b.bead.content.title),
  welder: (a, b) => compareText(a.welder ?? "\uffff", b.welder ?? "\uffff"),
};

export interface FoundBeads {
  readonly found: readonly ObservedBead[];
  /** All this actor may see, found or not: what a filter can choose from. */
  readonly all: readonly ObservedBead[];
}

/** The beads that fit, in the order asked for (newest first unless asked otherwise). */
export async function findBeads(
  db: Db,
  filter: BeadFilter,
  only: { readonly welderId?: string } = {},
  context?: AssessContext,
): Promise<FoundBeads> {
  const all = await observeBeads(db, await listBeads(db, only), context ?? (await assessContext(db)));
  const found = all.filter((one) => fitsFilter(filter, one));
  const order = orders[filter.sort ?? "newest"];
  return { found: order ? found.toSorted(order) : found, all };
}
