import { canonicalJson, fail, ok, type Result } from "@/lib/base";
import { BEAD_FILE_VERSION, beadFileVersion, BeadFileSchema, type ExchangeBead } from "./bead-file";

import type { ExchangeIssue } from "./issue";
import { beadIssues, readVersioned } from "./read-versioned";

/** One bead as JSON text. The same bead always gives the same text. Throws on a bead that does not fit its schema. */
export function serialiseBeadFile(bead: ExchangeBead): string {
  return canonicalJson(BeadFileSchema.parse({ schemaVersion: beadFileVersion([bead]), bead }));
}

/**
 * A bead from JSON text of unknown origin. Issues: `not-json`, `version-missing`, `version-newer`, `malformed`,
 * `id-twice`, `photo-unlisted`.
 */
export function parseBeadFile(text: string): Result<ExchangeBead, ExchangeIssue> {
  const file = readVersioned(text, BeadFileSchema, BEAD_FILE_VERSION);
  if (!file.ok) return file;
  const wrong = beadIssues(file.value.bead, ["bead"]);
  return wrong.length > 0 ? fail<ExchangeIssue>(...wrong) : ok(file.value.bead);
}
