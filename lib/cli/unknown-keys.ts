type Json = Readonly<Record<string, unknown>>;

/**
 * Keys of a case that its JSON Schema does not know, as lines "path: sentence". A mistyped name would else count as
 * "not given" without a word.
 *
 * @param allowed Names that may stand anywhere: what another door puts out beside what this one reads.
 */
export function unknownKeys(
  value: unknown,
  schema: Json,
  allowed: readonly string[] = [],
): readonly string[] {
  return walk(value, [schema], schema, [], new Set(allowed));
}

function walk(
  value: unknown,
  schemas: readonly Json[],
  root: Json,
  path: readonly (string | number)[],
  allowed: ReadonlySet<string>,
): readonly string[] {
  const plain = schemas.flatMap((schema) => alternatives(schema, root));
  if (Array.isArray(value)) {
    const items = plain.flatMap((schema) => [
      schema["items"],
      ...((schema["prefixItems"] as unknown[]) ?? []),
    ]);
    return value.flatMap((item, index) => walk(item, items.filter(isJson), root, [...path, index], allowed));
  }
  if (!isJson(value)) return [];
  const objects = plain.filter((schema) => isJson(schema["properties"]) && fits(value, schema));
  const free = plain.some((schema) => schema["type"] === "object" && schema["properties"] === undefined);
  if (free || objects.length === 0) return [];
  const of = (key: string): readonly Json[] =>
    objects.map((schema) => (schema["properties"] as Json)[key]).filter(isJson);
  return Object.entries(value).flatMap(([key, inner]) => {
    const known = of(key);
    if (known.length > 0) return walk(inner, known, root, [...path, key], allowed);
    if (allowed.has(key)) return [];
    const names = [...new Set(objects.flatMap((schema) => Object.keys(schema["properties"] as Json)))];
    return [`${[...path, key].join(".")}: there is no such name here. ${whatIsThere(key, names)}`];
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

/** Of several shapes told apart by a constant ("kind"), only the one that the value names. */
function fits(value: Json, schema: Json): boolean {
  return Object.entries(schema["properties"] as Json).every(
    ([key, inner]) =>
      !isJson(inner) ||
      inner["const"] === undefined ||
      value[key] === undefined ||
      inner["const"] === value[key],
  );
}

function whatIsThere(key: string, names: readonly string[]): string {
  const bare = (word: string): string => word.toLowerCase().replace(/[^a-z]/g, "");
  const near = names.find((name) => bare(name).startsWith(bare(key)) || bare(key).startsWith(bare(name)));
  if (near !== undefined) return `Is "${near}" meant?`;
  const shown = names.slice(0, 12).join(", ");
  return `Known: ${shown}${names.length > 12 ? " and others, see --schema" : ""}.`;
}

function isJson(value: unknown): value is Json {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
