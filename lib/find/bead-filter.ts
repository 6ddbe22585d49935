import { z } from "zod";
import { outcomes } from "@/lib/assess";
import {
  choiceFields,
  filterableFields,
  filterName,
  type FilterableField,
  type RunSetup,
  type SetupFilterName,
  setupFields,
} from "@/lib/setup";
import { imperfectionIds } from "@/lib/trade";
import { parseLength } from "@/lib/units";

/** Stands in a filter for "not recorded": a group of its own on every chart, so it must be findable. */
export const UNKNOWN = "unknown";

const orUnknown = <const T extends readonly string[]>(values: T) => z.enum([...values, UNKNOWN]).optional();
const text = (most: number) => z.string().trim().min(1).max(most).optional();
const number = z.coerce.number().min(0).max(20_000).optional();

type SetupFilters = {
  readonly [F in FilterableField as SetupFilterName<F>]: z.ZodOptional<
    z.ZodType<NonNullable<RunSetup[F]> | typeof UNKNOWN>
  >;
};

/** A closed question takes its own answers, a text any text of its kind. */
function setupFilter(field: FilterableField): z.ZodType {
  const choice = choiceFields.find((one) => one === field);
  return choice === undefined ? text(40) : orUnknown(Object.keys(setupFields[choice].words));
}

/** What of the set-up a list can be narrowed by. */
const setupFilters = Object.fromEntries(
  filterableFields.map((field) => [filterName(field), setupFilter(field)]),
) as unknown as SetupFilters;

export const verdictFilters = ["accept", "reject", "cannot-say", "decided", "none"] as const;
export const beadOrders = [
  "newest",
  "oldest",
  "number",
  "number-down",
  "title",
  "title-down",
  "welder",
  "welder-down",
] as const;

/**
 * What a list of beads can be narrowed by: the same words in the list's address, in saved filters, in exports and over
 * the HTTP API. Every part given must fit. Lengths in mm.
 */
export const BeadFilterSchema = z.object({
  /** Words that must all stand somewhere in the record. */
  q: text(200),
  welder: text(120),
  /** One of these words stands for who ran it: one person under several. */
  anyWelder: z.array(z.string().trim().min(1).max(120)).max(200).optional(),
  /**
   * Linked to this person; beside `anyWelder` also what is linked to nobody and stands under one of its words. "unknown":
   * linked to nobody.
   */
  person: text(60),
  ...setupFilters,
  minThickness: number,
  maxThickness: number,
  imperfection: z.enum(imperfectionIds).optional(),
  /** One of these at least is marked; in an address, once for each. */
  anyOf: z.array(z.enum(imperfectionIds)).max(imperfectionIds.length).optional(),
  /** Cause the next bead confirmed. */
  cause: text(60),
  /** One of these was confirmed. */
  anyCause: z.array(z.string().trim().min(1).max(60)).max(200).optional(),
  criteria: text(60),
  /** "decided": accepted or rejected; "none": no criteria chosen. */
  verdict: z.enum(verdictFilters).optional(),
  /** What the change tried on it did; "unknown": not said, or a first try. */
  outcome: orUnknown(outcomes),
  photo: z.enum(["yes", "no"]).optional(),
  /** Days in UTC, both included. */
  from: z.iso.date().optional(),
  to: z.iso.date().optional(),
  job: text(60),
  /** Run in this trial, by this card; "unknown": in none, by none. */
  trial: text(60),
  card: text(60),
  /** These beads only; in an address, `id` stands once for each. */
  id: z.array(z.string().min(1).max(60)).max(2000).optional(),
  sort: z.enum(beadOrders).optional(),
});
export type BeadFilter = z.infer<typeof BeadFilterSchema>;
export type FilterField = keyof BeadFilter;
export const filterFields = Object.keys(BeadFilterSchema.shape) as readonly FilterField[];

/** Fields that stand in an address once for each of their values. */
const manyFields: readonly FilterField[] = ["id", "anyOf", "anyCause", "anyWelder"];

/** What was asked, and the fields whose values say nothing (a mistyped date, a joint there is none of). */
export interface ReadFilter {
  readonly filter: BeadFilter;
  readonly unread: readonly string[];
}

/** Lengths that may be asked for in inches, under a name of their own: the filter itself knows millimetres only. */
export const inchName = (field: "minThickness" | "maxThickness"): string => `${field}In`;

/** null: not asked in inches. */
function inchesOf(field: FilterField, params: URLSearchParams): ReturnType<typeof parseLength> | null {
  if (field !== "minThickness" && field !== "maxThickness") return null;
  const typed = params.get(inchName(field))?.trim() ?? "";
  return typed === "" ? null : parseLength(typed, { default: "in", allowZero: true });
}

/** A filter from an address. Empty values are fields left empty in a form and count as not asked. */
export function readFilter(params: URLSearchParams): ReadFilter {
  const filter: Record<string, unknown> = {};
  const unread: string[] = [];
  for (const field of filterFields) {
    const inInches = inchesOf(field, params);
    if (inInches !== null) {
      if (inInches.ok) filter[field] = inInches.value;
      else unread.push(field);
      continue;
    }
    const values = params.getAll(field).filter((value) => value.trim() !== "");
    if (values.length === 0) continue;
    const parsed = BeadFilterSchema.shape[field].safeParse(manyFields.includes(field) ? values : values[0]);
    if (parsed.success) filter[field] = parsed.data;
    else unread.push(field);
  }
  return { filter: filter as BeadFilter, unread };
}

/** The address part of a filter, fields in their fixed order; what is not asked is left out. */
export function filterQuery(filter: BeadFilter): string {
  const params = new URLSearchParams();
  for (const field of filterFields) {
    const value = filter[field];
    for (const one of Array.isArray(value) ? value : [value])
      if (one !== undefined) params.append(field, String(one));
  }
  return params.toString();
}
