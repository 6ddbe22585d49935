import type { z } from "zod";
import { countBeadPoints } from "@/lib/assess";
import { fail, issue, ok, type Result } from "@/lib/base";
import { MOST_POINTS } from "@/lib/marks";
import type { ExchangeBead } from "./bead-file";
import type { ExchangeIssue } from "./issue";

const pathStep = (step: PropertyKey): string | number => (typeof step === "symbol" ? String(step) : step);

/** JSON text of a versioned file: version first, then shape. Issues name the place. */
export function readVersioned<S extends z.ZodType>(
  text: string,
  schema: S,
  known: number,
): Result<z.output<S>, ExchangeIssue> {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return fail(issue("not-json"));
  }
  const found =
    typeof json === "object" && json !== null && "schemaVersion" in json ? json.schemaVersion : null;
  if (typeof found !== "number") return fail(issue("version-missing", ["schemaVersion"]));
  if (found > known) return fail(issue("version-newer", ["schemaVersion"], { found, known }));
  const parsed = schema.safeParse(json);
  if (parsed.success) return ok(parsed.data);
  return fail<ExchangeIssue>(
    ...parsed.error.issues.map((problem) =>
      issue("malformed" as const, problem.path.map(pathStep), { problem: problem.code }),
    ),
  );
}

/** What a schema cannot say: ids are unique, and a drawing belongs to a photo that is described. */
export function beadIssues(bead: ExchangeBead, path: readonly (string | number)[]): readonly ExchangeIssue[] {
  const { content, photos } = bead;
  const known = new Set(photos.map(({ id }) => id));
  const tooMany = countBeadPoints(content) > MOST_POINTS;
  return [
    ...(tooMany ? [issue("malformed" as const, [...path, "content"], { problem: "too-many-points" })] : []),
    ...repeated(photos, [...path, "photos"]),
    ...repeated(content.photos, [...path, "content", "photos"]),
    ...content.photos.flatMap(({ drawing }, i) =>
      repeated(drawing.marks, [...path, "content", "photos", i, "drawing", "marks"]),
    ),
    ...content.photos.flatMap(({ id }, i) =>
      known.has(id)
        ? []
        : [issue("photo-unlisted" as const, [...path, "content", "photos", i], { photoId: id })],
    ),
  ];
}

export function repeated(
  items: readonly { readonly id: string }[],
  path: readonly (string | number)[],
): readonly ExchangeIssue[] {
  const seen = new Set<string>();
  return items.flatMap(({ id }, i) => {
    if (!seen.has(id)) {
      seen.add(id);
      return [];
    }
    return [issue("id-twice" as const, [...path, i, "id"], { id })];
  });
}
