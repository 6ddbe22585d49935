import { fail, issue, ok, type Issue, type Result } from "@/lib/base";
import { DRAWING_VERSION, DrawingSchema, type Drawing } from "./drawing";

/**
 * - `drawing-not-json`: the text is no JSON.
 * - `drawing-version-unknown`: written by a later version (`data.found`), or none is stated (`data.found` = "none").
 * - `drawing-malformed`: a value at `path` is missing or outside its bounds; `data.problem` is the schema's code.
 * - `drawing-id-twice`: two marks share `data.id`.
 */
export type DrawingIssueCode =
  "drawing-not-json" | "drawing-version-unknown" | "drawing-malformed" | "drawing-id-twice";
export type DrawingIssue = Issue<DrawingIssueCode>;

/** Stored text of a drawing. */
export function serialiseDrawing(drawing: Drawing): string {
  return JSON.stringify(drawing);
}

/** A drawing from its stored text. */
export function parseDrawingText(text: string): Result<Drawing, DrawingIssue> {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return fail(issue("drawing-not-json"));
  }
  return parseDrawing(json);
}

/** A drawing from parsed JSON of unknown origin: every issue names the place in it. */
export function parseDrawing(json: unknown): Result<Drawing, DrawingIssue> {
  const version = versionOf(json);
  if (version !== DRAWING_VERSION) {
    const found = typeof version === "number" || typeof version === "string" ? version : "none";
    return fail(issue("drawing-version-unknown", ["schemaVersion"], { found }));
  }
  const parsed = DrawingSchema.safeParse(json);
  if (!parsed.success) {
    const issues = parsed.error.issues.map((problem) =>
      issue("drawing-malformed", problem.path.map(pathStep), { problem: problem.code }),
    );
    return fail<DrawingIssue>(...issues);
  }
  const twice = repeatedIds(parsed.data);
  return twice.length > 0 ? fail<DrawingIssue>(...twice) : ok(parsed.data);
}

const pathStep = (step: PropertyKey): string | number => (typeof step === "symbol" ? String(step) : step);

function versionOf(json: unknown): unknown {
  return typeof json === "object" && json !== null && "schemaVersion" in json
    ? json.schemaVersion
    : undefined;
}

function repeatedIds(drawing: Drawing): readonly DrawingIssue[] {
  const seen = new Set<string>();
  return drawing.marks.flatMap((mark, i) => {
    if (!seen.has(mark.id)) {
      seen.add(mark.id);
      return [];
    }
    return [issue("drawing-id-twice" as const, ["marks", i, "id"], { id: mark.id })];
  });
}
