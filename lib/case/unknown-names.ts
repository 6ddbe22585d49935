import { lineAt } from "./case-answer";
import { nearMiss, sameLetters } from "./near-miss";
import { unitOfName } from "./unit-of-name";

type Json = Readonly<Record<string, unknown>>;
type Path = readonly (string | number)[];

/**
 * Names of a case that its JSON Schema does not know, as lines "path: sentence". A mistyped name would else count as
 * "not given" without a word.
 *
 * @param allowed Names that may stand anywhere: what another door puts out beside what this one reads.
 */
export function unknownNames(
  value: unknown,
  schema: Json,
  allowed: readonly string[] = [],
): readonly string[] {
  return walk(value, [schema], { root: schema, allowed: new Set(allowed) }, []);
}

interface Given {
  readonly root: Json;
  readonly allowed: ReadonlySet<string>;
}

/** Goes no deeper than the schemas do, so that nesting without end costs nothing. */
function walk(value: unknown, schemas: readonly Json[], given: Given, path: Path): readonly string[] {
  if (schemas.length === 0) return [];
  const plain = schemas.flatMap((schema) => alternatives(schema, given.root));
  if (Array.isArray(value)) {
    const items = plain
      .flatMap((schema) => [schema["items"], ...((schema["prefixItems"] as unknown[]) ?? [])])
      .filter(isJson);
    return value.flatMap((item, index) => walk(item, items, given, [...path, index]));
  }
  return isJson(value) ? walkObject(value, plain, given, path) : [];
}

function walkObject(value: Json, plain: readonly Json[], given: Given, path: Path): readonly string[] {
  const objects = plain.filter((schema) => namesOf(schema) !== null && fits(value, schema));
  const free = plain.some((schema) => schema["type"] === "object" && namesOf(schema) === null);
  if (!free && objects.length === 0) return [];
  const names = [...new Set(objects.flatMap((schema) => namesOf(schema) ?? []))];
  return Object.entries(value).flatMap(([key, inner]) => {
    // No parser keeps this one, so it would be dropped without a word.
    if (key !== "__proto__" && names.includes(key)) {
      const known = objects.map((schema) => propertiesOf(schema)[key]).filter(isJson);
      return walk(inner, known, given, [...path, key]);
    }
    if (key !== "__proto__" && (free || given.allowed.has(key))) return [];
    return [lineAt([...path, key], `There is no such name here. ${nameMeant(key, names)}`.trim())];
  });
}

/** A schema without its references and choices. */
function alternatives(schema: Json, root: Json): readonly Json[] {
  const reference = schema["$ref"];
  if (typeof reference === "string") {
    const target = reference
      .split("/")
      .slice(1)
      .reduce<unknown>((at, step) => (isJson(at) ? at[step] : undefined), root);
    return isJson(target) ? alternatives(target, root) : [];
  }
  const parts = ["anyOf", "oneOf", "allOf"].flatMap((word) => (schema[word] as unknown[]) ?? []);
  return [schema, ...parts.filter(isJson).flatMap((part) => alternatives(part, root))];
}

/** The names an object may have; null where it may have any. */
function namesOf(schema: Json): readonly string[] | null {
  if (isJson(schema["properties"])) return Object.keys(schema["properties"]);
  const listed = isJson(schema["propertyNames"]) ? schema["propertyNames"]["enum"] : undefined;
  return Array.isArray(listed) ? (listed as string[]) : null;
}

function propertiesOf(schema: Json): Json {
  return isJson(schema["properties"]) ? schema["properties"] : {};
}

/** Of several shapes told apart by a constant ("kind"), only the one that the value names. */
function fits(value: Json, schema: Json): boolean {
  return Object.entries(propertiesOf(schema)).every(
    ([key, inner]) =>
      !isJson(inner) ||
      inner["const"] === undefined ||
      value[key] === undefined ||
      inner["const"] === value[key],
  );
}

/** The name that may be meant, with its unit: whoever wrote "depthIn" or "depth" may have meant another one. */
export function nameMeant(key: string, names: readonly string[]): string {
  const near = nearMiss(key, names);
  if (near !== null) {
    const unit = sameLetters(key, near) ? null : unitOfName(near);
    return `Is "${near}" meant?${unit === null || unit === near ? "" : ` It is in ${unit}.`}`;
  }
  if (names.length === 0) return "";
  return `Known: ${names.slice(0, 12).join(", ")}${names.length > 12 ? " and others, see the schema" : ""}.`;
}

function isJson(value: unknown): value is Json {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
