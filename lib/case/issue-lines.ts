import { MM_PER_INCH } from "@/lib/base";
import type { z } from "zod";
import { lineAt, shown } from "./case-answer";
import { nearMiss } from "./near-miss";
import { unitOfName } from "./unit-of-name";

type ZodIssue = z.core.$ZodIssue;
type Path = readonly PropertyKey[];

/**
 * One complaint of a schema as lines "path: sentence", in our words. Of a choice of shapes, the complaints of the one
 * that came nearest. Unknown names are found by `unknownNames`, which knows the near misses.
 *
 * @param json What the schema was given: a complaint does not hold the value it is about.
 */
export function issueLines(issue: ZodIssue, json: unknown, before: Path = []): readonly string[] {
  const path = [...before, ...issue.path];
  const at = (sentence: string): readonly string[] => [lineAt(path, sentence)];
  const value = valueAt(json, path);
  switch (issue.code) {
    case "unrecognized_keys":
      return [];
    case "invalid_union":
      return unionLines(issue, json, path);
    case "invalid_type":
      return at(wantedNot(wantedBy(issue, path), value, path));
    case "invalid_value":
      return at(
        typeof value === "string"
          ? noneOf(value, issue.values)
          : wantedNot(wantedBy(issue, path), value, path),
      );
    case "too_small":
    case "too_big":
      return at(`${boundOf(issue, path)} wanted here, not ${amountOf(value)}.`);
    case "invalid_format":
      return at(`Text that fits ${issue.pattern ?? issue.format} is wanted here, not ${given(value)}.`);
    case "invalid_key":
      return at("This cannot be a name here.");
    case "custom":
      return at(customSentences[issue.message] ?? "This does not fit.");
    default:
      return at("This does not fit.");
  }
}

/** The codes that schemas of ours give where two fields do not go together. */
export const customSentences: Readonly<Record<string, string>> = {
  "limit-needed": 'Give "limit" or "ofThickness"; a row with "none-allowed" takes neither.',
  "thickness-only-for-lengths": "A part of the thickness limits sizes only, not a number of imperfections.",
  "window-only-for-totals": "A window counts only for totals and counts.",
  "imperfection-needed": "Name at least one imperfection.",
  "id-twice": "Two rows have this id.",
  "unit-mm": "A size in mm is wanted here; another unit says something else.",
  "unit-mm2": "An area in mm2 is wanted here; another unit says something else.",
  "unit-deg": "An angle in degrees is wanted here (deg); another unit says something else.",
};

function unionLines(
  issue: Extract<ZodIssue, { code: "invalid_union" }>,
  json: unknown,
  path: Path,
): readonly string[] {
  const value = valueAt(json, path);
  if (issue.errors.length === 0) {
    const options = "options" in issue && Array.isArray(issue.options) ? (issue.options as string[]) : [];
    return [
      lineAt(
        path,
        typeof value === "string" ? noneOf(value, options) : wantedNot([oneOf(options)], value, path),
      ),
    ];
  }
  const depth = (list: readonly ZodIssue[]): number => Math.max(0, ...list.map((one) => one.path.length));
  const isKind = ({ code }: ZodIssue): boolean => code === "invalid_type" || code === "invalid_value";
  const nearest =
    issue.errors.toSorted((a, b) => depth(b) - depth(a)).find((list) => depth(list) > 0) ??
    issue.errors.find((list) => list.length > 0 && !list.some(isKind));
  if (nearest !== undefined) return nearest.flatMap((one) => issueLines(one, json, path));
  const wanted = issue.errors.flatMap(([first]) => (first === undefined ? [] : wantedBy(first, path)));
  return [lineAt(path, wantedNot([...new Set(wanted)], value, path))];
}

const kinds: Readonly<Record<string, string>> = {
  string: "text",
  boolean: "true or false",
  array: "a list",
  tuple: "a list",
  object: "an object",
  record: "an object",
};

/** What would have been right. */
function wantedBy(issue: ZodIssue, path: Path): readonly string[] {
  if (issue.code === "invalid_value") return [oneOf(issue.values)];
  if (issue.code !== "invalid_type") return [];
  const { expected } = issue;
  if (expected === "int") return ["a whole number"];
  return expected === "number" ? [`a number${inUnit(path)}`] : [kinds[expected] ?? expected];
}

function wantedNot(wanted: readonly string[], value: unknown, path: Path): string {
  // Who wrote a text or a number did not think of an object.
  const simple = typeof value === "object" ? wanted : wanted.filter((one) => one !== "an object");
  const words = either(simple.length > 0 ? simple : wanted);
  if (value === undefined) return `This is missing: give ${words}.`;
  if (typeof value === "number" && !Number.isFinite(value)) return "This number is larger than can be held.";
  const inches = typeof value === "string" && unitIn(path) === "mm" && /\d\s*(in\b|inch|")/i.test(value);
  const exact = inches ? ` 1 in is ${MM_PER_INCH} mm.` : "";
  return `${words.charAt(0).toUpperCase()}${words.slice(1)} is wanted here, not ${given(value)}.${exact}`;
}

function either(words: readonly string[]): string {
  if (words.length < 3) return words.join(" or ");
  return `${words.slice(0, -1).join(", ")}, or ${words.at(-1)}`;
}

/** "At most 20000 mm is", "Exactly 4 entries are". */
function boundOf(issue: Extract<ZodIssue, { code: "too_small" | "too_big" }>, path: Path): string {
  const bound = Number(issue.code === "too_small" ? issue.minimum : issue.maximum);
  const [closed, open] = issue.code === "too_small" ? ["At least", "More than"] : ["At most", "Less than"];
  const words = "exact" in issue && issue.exact ? "Exactly" : (issue.inclusive ?? true) ? closed : open;
  if (["number", "int", "bigint"].includes(issue.origin)) {
    const unit = unitIn(path);
    return `${words} ${bound}${unit === null ? "" : ` ${unit}`} is`;
  }
  const [one, many] = issue.origin === "string" ? ["character", "characters"] : ["entry", "entries"];
  return bound === 1 ? `${words} 1 ${one} is` : `${words} ${bound} ${many} are`;
}

function amountOf(value: unknown): string {
  return String(typeof value === "string" || Array.isArray(value) ? value.length : value);
}

function noneOf(value: string, known: readonly unknown[]): string {
  const names = known.map(String);
  const near = nearMiss(value, names);
  return near === null
    ? `There is no ${quoted(value)} here. Choose ${oneOf(known)}.`
    : `There is no ${quoted(value)} here. Is "${near}" meant?`;
}

function oneOf(values: readonly unknown[]): string {
  const [only, ...more] = values
    .slice(0, 12)
    .map((one) => (typeof one === "string" ? `"${one}"` : String(one)));
  if (only === undefined) return "another choice";
  if (more.length === 0) return only;
  return `one of ${[only, ...more].join(", ")}${values.length > 12 ? " and others, see the schema" : ""}`;
}

function given(value: unknown): string {
  if (typeof value === "string") return `text (${quoted(value)})`;
  if (Array.isArray(value)) return "a list";
  return typeof value === "object" && value !== null ? "an object" : String(value);
}

function quoted(text: string): string {
  return JSON.stringify(shown(text));
}

function inUnit(path: Path): string {
  const unit = unitIn(path);
  return unit === null ? "" : ` in ${unit}`;
}

/** By the innermost name: an index has none of its own. */
function unitIn(path: Path): string | null {
  return unitOfName(String(path.findLast((step) => typeof step === "string") ?? ""));
}

function valueAt(json: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (at, step) =>
      typeof at === "object" && at !== null && Object.hasOwn(at, step)
        ? (at as Record<PropertyKey, unknown>)[step]
        : undefined,
    json,
  );
}
