import { createHash } from "node:crypto";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { canonicalJson } from "@/lib/base";

/** What somebody with an editor has of an archive's list: plain JSON that nobody checks. */
// eslint-disable-next-line @typescript-eslint/no-explicit-any
export type LooseManifest = any;

export const sha256Hex = (text: string): string => createHash("sha256").update(text).digest("hex");

export const manifestOf = (archive: Uint8Array): LooseManifest =>
  JSON.parse(strFromU8(unzipSync(archive)["manifest.json"] ?? new Uint8Array()));

/** The archive with its list changed and every checksum of the packing worked out anew, as anybody can. */
export function repacked(archive: Uint8Array, change: (manifest: LooseManifest) => void): Uint8Array {
  const files = unzipSync(archive);
  const manifest = manifestOf(archive);
  change(manifest);
  const text = canonicalJson(manifest);
  files["manifest.json"] = strToU8(text);
  files["manifest.json.sha256"] = strToU8(`${sha256Hex(text)}  manifest.json\n`);
  return zipSync(files, { level: 0 });
}

export const signedOf = (manifest: LooseManifest): LooseManifest[] =>
  manifest.jobs.flatMap((job: LooseManifest) =>
    job.inspections.flatMap((inspection: LooseManifest) => inspection.signed),
  );

/** Every signed text of the archive changed, and its plain digest worked out anew. */
export function resigned(manifest: LooseManifest, change: (record: LooseManifest) => void): void {
  for (const signed of signedOf(manifest)) {
    const record = JSON.parse(signed.content);
    change(record);
    signed.content = canonicalJson(record);
    signed.digest = sha256Hex(signed.content);
  }
}

let forged = 0;

/** Other ids for everything but the people, so that nothing here stands in the way of an import. */
export function underOtherIds(manifest: LooseManifest): LooseManifest {
  const ids = new Set<string>();
  for (const { id, photos } of manifest.beads) for (const one of [{ id }, ...photos]) ids.add(one.id);
  for (const job of manifest.jobs) {
    ids.add(job.id);
    for (const { id, signed } of job.inspections) for (const one of [{ id }, ...signed]) ids.add(one.id);
  }
  forged += 1;
  let text = JSON.stringify(manifest);
  for (const id of ids) text = text.replaceAll(id, `${id.slice(0, -2)}${forged + 10}`);
  Object.assign(manifest, JSON.parse(text));
  resigned(manifest, () => undefined);
  return manifest;
}
