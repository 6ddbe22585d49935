import type { AskedFor, FilterQuestion } from "@/components/beads";
import { listCriteria, type ShopCriteria } from "@/lib/accept";
import { diagnoseVocabulary } from "@/lib/diagnose";
import { filterFields, filterQuery, inchName, UNKNOWN, type BeadFilter, type Choices } from "@/lib/find";
import { outcomeWords, verdictWords } from "@/lib/report";
import { fieldLabel, fieldRow, filterableFields, filterName, type SetupField } from "@/lib/setup";
import { imperfections } from "@/lib/trade";
import { fieldText, formatThickness, lengthSystem, type UnitPreferences } from "@/lib/units";

type Field = keyof BeadFilter;
type Words = Readonly<Record<string, string>>;

export const causeNames: Words = Object.fromEntries(
  diagnoseVocabulary().causes.map(({ id, name }) => [id, name]),
);
export const imperfectionNames: Words = Object.fromEntries(
  Object.values(imperfections).map(({ id, name }) => [id, name]),
);
/** Built in by title; the shop's own by title and version, so that two versions are two answers. */
const criteriaNames = (shopSets: readonly ShopCriteria[]): Words =>
  Object.fromEntries(
    listCriteria(shopSets).map(({ id, title, edition, shop }) => [
      id,
      shop === null ? title : `${title}, ${edition}`,
    ]),
  );

/** The words of a closed question of the set-up. */
export function setupWords(field: SetupField): Words | undefined {
  const row = fieldRow(field);
  return "words" in row ? row.words : undefined;
}

/** A question whose answers are what stands in the records, so that no answer finds nothing. */
interface Asked {
  readonly field: Field;
  readonly label: string;
  readonly words?: Words | undefined;
  readonly recorded: keyof Choices;
}

const asked: readonly Asked[] = [
  { field: "welder", label: "Welder", recorded: "welder" },
  ...filterableFields.map((key): Asked => ({
    field: filterName(key),
    label: fieldLabel(key),
    words: setupWords(key),
    recorded: key,
  })),
  { field: "imperfection", label: "Marked", words: imperfectionNames, recorded: "imperfection" },
  { field: "cause", label: "Confirmed cause", words: causeNames, recorded: "confirmedCause" },
  { field: "criteria", label: "Criteria", recorded: "criteriaId" },
];

const fixed: readonly { field: Field; label: string; words: Words }[] = [
  {
    field: "verdict",
    label: "Verdict",
    words: {
      accept: verdictWords.accept.short,
      reject: verdictWords.reject.short,
      "cannot-say": verdictWords["cannot-say"].short,
      decided: "Met or not met",
      none: "No criteria chosen",
    },
  },
  {
    field: "outcome",
    label: "What the change did",
    words: { ...outcomeWords, [UNKNOWN]: "Not said" },
  },
  { field: "photo", label: "Photo", words: { yes: "With a photo", no: "Without" } },
];
const sortWords: Words = {
  newest: "Newest first",
  oldest: "Oldest first",
  number: "Number",
  "number-down": "Number, highest first",
  title: "Title",
  "title-down": "Title, Z to A",
  welder: "Welder",
  "welder-down": "Welder, Z to A",
};
const days: readonly { field: "from" | "to"; label: string }[] = [
  { field: "from", label: "From day (UTC)" },
  { field: "to", label: "To day (UTC)" },
];
const lengths: readonly { field: "minThickness" | "maxThickness"; label: string }[] = [
  { field: "minThickness", label: `${fieldLabel("thicknessMm")} from` },
  { field: "maxThickness", label: `${fieldLabel("thicknessMm")} to` },
];

const wordsOf = ({ field, words }: Asked, shopSets: readonly ShopCriteria[]): Words | undefined =>
  field === "criteria" ? criteriaNames(shopSets) : words;

const optionsOf = (words: Words): FilterQuestion["options"] =>
  Object.entries(words).map(([value, label]) => ({ value, label }));

function recordedOptions(found: Choices[keyof Choices], words: Words | undefined): FilterQuestion["options"] {
  const known = found.flatMap((value) => (value === null ? [] : [{ value, label: words?.[value] ?? value }]));
  known.sort((a, b) => a.label.localeCompare(b.label, "en"));
  return found.includes(null) ? [...known, { value: UNKNOWN, label: "Not recorded" }] : known;
}

const sortQuestion: Omit<FilterQuestion, "value"> = {
  name: "sort",
  label: "Sort by",
  kind: "choice",
  options: optionsOf(sortWords),
};

/** Asked in the reader's unit, under a name that says which. */
const lengthQuestions = (filter: BeadFilter, units: UnitPreferences): readonly FilterQuestion[] =>
  lengths.map(({ field, label }) => ({
    name: units.length === "in" ? inchName(field) : field,
    label: `${label} (${units.length})`,
    kind: units.length === "in" ? "text" : "number",
    value: fieldText("length", filter[field] ?? null, units),
    options: [],
  }));

/** Every question a list of beads can be narrowed by, with the answers that stand in the records. */
export function filterQuestions(
  filter: BeadFilter,
  choices: Choices,
  {
    sort,
    shopSets = [],
    units,
  }: { readonly sort: boolean; readonly shopSets?: readonly ShopCriteria[]; readonly units: UnitPreferences },
): readonly FilterQuestion[] {
  const value = (field: Field): string => String(filter[field] ?? "");
  return [
    ...asked.map((one): FilterQuestion => ({
      name: one.field,
      label: one.label,
      kind: "choice",
      value: value(one.field),
      options: recordedOptions(choices[one.recorded], wordsOf(one, shopSets)),
    })),
    ...fixed.map(({ field, label, words }): FilterQuestion => ({
      name: field,
      label,
      kind: "choice",
      value: value(field),
      options: optionsOf(words),
    })),
    ...days.map(({ field, label }): FilterQuestion => ({
      name: field,
      label,
      kind: "date",
      value: value(field),
      options: [],
    })),
    ...lengthQuestions(filter, units),
    ...(sort ? [{ ...sortQuestion, value: value("sort") }] : []),
  ];
}

const labels: Readonly<
  Partial<Record<Field, { readonly label: string; readonly words?: Words | undefined }>>
> = Object.fromEntries(
  [...asked, ...fixed, ...days, ...lengths, { field: "sort", label: "Sorted by", words: sortWords }].map(
    (one) => [one.field, { label: one.label, words: "words" in one ? one.words : undefined }],
  ),
);

type AnyField = "anyOf" | "anyCause" | "anyWelder";
const isAny = (field: Field): field is AnyField =>
  field === "anyOf" || field === "anyCause" || field === "anyWelder";
const anyLabels = { anyOf: "Marked", anyCause: "Confirmed cause", anyWelder: "Run by" } as const;

function sayAny(field: AnyField, value: unknown): string {
  const names: Words = { anyOf: imperfectionNames, anyCause: causeNames, anyWelder: {} }[field];
  const words = (Array.isArray(value) ? value.map(String) : []).map((one) => names[one] ?? one);
  return `${anyLabels[field]}: ${words.join(" or ")}`;
}

function sayPart(
  field: Field,
  value: NonNullable<BeadFilter[Field]>,
  shopSets: readonly ShopCriteria[],
  units: UnitPreferences,
): string {
  if (field === "q") return `“${String(value)}”`;
  if (isAny(field)) return sayAny(field, value);
  if (Array.isArray(value)) return value.length === 1 ? "1 picked bead" : `${value.length} picked beads`;
  if (field === "job") return "Of one job";
  if (field === "person") return value === UNKNOWN ? "Linked to nobody" : "Of one person of that name";
  if (field === "trial") return value === UNKNOWN ? "In no trial" : "Of one trial";
  if (field === "card") return value === UNKNOWN ? "By no card" : "By one card";
  if (field === "criteria" && value !== UNKNOWN)
    return `Criteria: ${criteriaNames(shopSets)[String(value)] ?? String(value)}`;
  const { label = field, words } = labels[field] ?? {};
  if (field === "minThickness" || field === "maxThickness")
    return `${label}: ${formatThickness(Number(value), lengthSystem(units.length))}`;
  return `${label}: ${words?.[String(value)] ?? (value === UNKNOWN ? "not recorded" : String(value))}`;
}

/** What is asked for now in words, each with the address without it; `rest` is what else the address holds. */
export function askedFor(
  filter: BeadFilter,
  page: string,
  {
    rest = "",
    shopSets,
    units,
  }: { readonly rest?: string; readonly shopSets: readonly ShopCriteria[]; readonly units: UnitPreferences },
): readonly AskedFor[] {
  return filterFields.flatMap((field) => {
    const value = filter[field];
    if (value === undefined) return [];
    const { [field]: _off, ...others } = filter;
    const query = [filterQuery(others), rest].filter(Boolean).join("&");
    return [{ label: sayPart(field, value, shopSets, units), without: query ? `${page}?${query}` : page }];
  });
}

/** Every part of a filter as a form's hidden fields. */
export function hiddenParts(filter: BeadFilter): readonly (readonly [string, string])[] {
  return [...new URLSearchParams(filterQuery(filter))];
}

/** A page's `searchParams` as the address had them. */
export function asParams(search: Readonly<Record<string, string | string[] | undefined>>): URLSearchParams {
  const params = new URLSearchParams();
  for (const [name, value] of Object.entries(search))
    for (const one of Array.isArray(value) ? value : [value]) if (one !== undefined) params.append(name, one);
  return params;
}

/** The parts of a filter that no form asks about and none may lose. */
export const many = ({ id, anyOf, anyCause, anyWelder, person, trial, card }: BeadFilter): BeadFilter => ({
  ...{ id, anyOf, anyCause, anyWelder, person },
  ...{ trial, card },
});

/** Said wherever figures leave out, and lists mark, what is being worked out again. */
export function staleLine(stale: number): string {
  return stale === 1
    ? "One bead is being worked out again after a change; until then its verdict and figures are left out."
    : `${stale} beads are being worked out again after a change; until then their verdicts and figures are left out.`;
}
