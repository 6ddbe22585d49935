import { z } from "zod";
import { canonicalJson } from "@/lib/base";
import {
  beadFileVersion,
  beadFileVersions,
  ExchangeBeadSchema,
  WITHOUT_SECTIONS,
  type ExchangeBead,
} from "./bead-file";

/** Several beads in one file, in the order given. Photos are named by their SHA-256; their bytes travel in an archive. */
export const BeadsFileSchema = z.object({
  schemaVersion: z.literal(beadFileVersions),
  beads: z.array(ExchangeBeadSchema).readonly(),
});

/** The same beads always give the same text. Throws on a bead that does not fit its schema. @twice */
export function serialiseBeadsFile(beads: readonly ExchangeBead[]): string {
  return canonicalJson(BeadsFileSchema.parse({ schemaVersion: beadFileVersion(beads), beads }));
}

/**
 * The same text in parts, bead after bead, so that however many there are, a slice of them is in memory. The keys of
 * canonical JSON are sorted: the version, which depends on the beads, comes last.
 */
export async function* beadsFileText(
  slices: AsyncIterable<readonly ExchangeBead[]> | Iterable<readonly ExchangeBead[]>,
): AsyncGenerator<string> {
  let version: number = WITHOUT_SECTIONS;
  let before = '{"beads":[';
  for await (const beads of slices) {
    for (const bead of beads) {
      yield before + canonicalJson(ExchangeBeadSchema.parse(bead));
      before = ",";
    }
    version = Math.max(version, beadFileVersion(beads));
  }
  yield `${before === "," ? "" : before}],"schemaVersion":${version}}`;
}

/** The published JSON Schema (draft 2020-12) of what `serialiseBeadsFile` writes. */
export function beadsFileJsonSchema(): Record<string, unknown> {
  return {
    ...z.toJSONSchema(BeadsFileSchema, { target: "draft-2020-12", io: "output" }),
    title: "Toeline beads file",
  };
}
