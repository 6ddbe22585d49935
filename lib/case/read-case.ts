import { z } from "zod";
import { refused, type CaseAnswer } from "./case-answer";
import { issueLines } from "./issue-lines";
import { unknownNames } from "./unknown-names";

/**
 * A case as its schema reads it, or lines that say what is wrong. A name that the schema does not know is wrong too,
 * at any depth, unless it is among `alsoAllowed`.
 */
export function readCase<S extends z.ZodType>(
  schema: S,
  json: unknown,
  alsoAllowed: readonly string[] = [],
): CaseAnswer<z.output<S>> {
  const parsed = schema.safeParse(json);
  const wrong = parsed.success ? [] : parsed.error.issues.flatMap((one) => issueLines(one, json));
  const lines = [...wrong, ...unknownNames(json, shapeOf(schema), alsoAllowed)];
  if (lines.length > 0) return refused(lines);
  // A complaint that found no words is a complaint still.
  return parsed.success
    ? { ok: true, value: parsed.data }
    : refused(["(top): This does not fit the schema."]);
}

/** One schema serves many cases: its JSON form is made once. */
const shapes = new WeakMap<z.ZodType, Record<string, unknown>>();

function shapeOf(schema: z.ZodType): Record<string, unknown> {
  const made = shapes.get(schema) ?? (z.toJSONSchema(schema, { io: "input" }) as Record<string, unknown>);
  shapes.set(schema, made);
  return made;
}
