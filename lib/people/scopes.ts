import type { Deed } from "./deeds";

/** What a token may be given, by the areas of the HTTP API. A token never reaches further than its person. */
export const scopes = [
  "beads:read",
  "beads:write",
  "course:read",
  "jobs:read",
  "jobs:write",
  "limits:write",
  "trends:read",
  "data:export",
  "data:import",
  "log:read",
] as const;
export type Scope = (typeof scopes)[number];

export const scopeNames: Readonly<Record<Scope, string>> = {
  "beads:read": "Read beads, photos, sheets, limits, trials and cards",
  "beads:write": "Make and change beads",
  "course:read": "Read groups, exercises, hand-ins and feedback",
  "jobs:read": "Read jobs, gauge studies and signed records",
  "jobs:write": "Make and change jobs and drafts of inspections",
  "limits:write": "Make new versions of the shop's own limits",
  "trends:read": "Read trends",
  "data:export": "Export tables and archives",
  "data:import": "Import archives",
  "log:read": "Read and verify the log",
};

/** Deeds without an entry are never done by a token: signing needs a passphrase, people and settings a person. */
export const scopeOfDeed: Readonly<Partial<Record<Deed, Scope>>> = {
  "bead.read": "beads:read",
  "bead.write": "beads:write",
  "bead.create": "beads:write",
  "bead.delete": "beads:write",
  "feedback.read": "course:read",
  "course.read": "course:read",
  "job.read": "jobs:read",
  "job.write": "jobs:write",
  "record.read": "jobs:read",
  "criteria.write": "limits:write",
  "trends.read": "trends:read",
  "data.export": "data:export",
  "data.import": "data:import",
  "log.read": "log:read",
};
