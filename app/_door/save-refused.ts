import type { RecordIssue } from "@/lib/store";

/** The answer to a save by program that did not arrive whole. */
export function saveNotUnderstood(): Response {
  const message =
    'A save is { "basedOn": the number it was read at, "content": the whole }. Nothing was changed.';
  return Response.json({ issues: [{ code: "save-not-understood", path: [], message }] }, { status: 400 });
}

const statuses: Partial<Record<RecordIssue["code"], number>> = {
  "job-gone": 404,
  "job-changed-elsewhere": 409,
  "weld-has-beads": 409,
  "job-not-understood": 422,
  "criteria-gone": 404,
  "criteria-changed-elsewhere": 409,
  "criteria-not-understood": 422,
};

/** The status of a refused save, by its first issue; 503 where the store itself did not do it. */
export function statusOf(issues: readonly RecordIssue[]): number {
  return statuses[issues[0]?.code as RecordIssue["code"]] ?? 503;
}
