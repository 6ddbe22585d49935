/**
 * The one that is killed: a process that writes as the server does, by the rooms' own functions, and says of each deed when
 * it began and when it was acknowledged. Argument: the data folder, a seed, a fault to be put in on purpose.
 */
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import path from "node:path";
import { Readable } from "node:stream";
import { importArchive } from "@/lib/archive";
import { emptyBeadContent } from "@/lib/assess";
import { makeBackup } from "@/lib/backup";
import { addPhoto, attachPhoto, createBead, saveBead } from "@/lib/beads";
import { openDb } from "@/lib/db";
import { createInspection, draftRecord, seenDigest, signInspection } from "@/lib/jobs";
import { receivePhoto } from "@/lib/photo";
import { smallPhoto } from "../setup/small-shop";
import type { Deed, Prepared, Told, Wish } from "./deeds";

const [folder = "", seed = "1", fault = ""] = process.argv.slice(2);
const prepared = JSON.parse(readFileSync(path.join(folder, "prepared.json"), "utf8")) as Prepared;
const db = openDb(`file:${path.join(folder, "toeline.db")}`);
const pen = { db, by: "test" };

let state = Number(seed) >>> 0;
function chance(below: number): number {
  state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
  return Math.floor((state / 2 ** 32) * below);
}
const tell = (told: Told) => process.send?.(told);
function value<T>(result: { ok: true; value: T } | { ok: false; issues: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

let revision = prepared.revision;
let photos = 0;
let backups = 0;
const archives = [...prepared.archives];

const deeds: Record<Deed, (said: (proof: string) => void) => Promise<void>> = {
  async make(said) {
    said(value(await createBead(pen, { title: "made" })).id);
  },
  async save(said) {
    const title = `saved ${chance(1e9)}`;
    if (fault === "told-too-early") said(title);
    const saved = value(await saveBead(pen, prepared.beadId, revision, { ...emptyBeadContent, title }));
    revision = saved.revision;
    if (fault !== "told-too-early") said(title);
  },
  async photo(said) {
    const bytes = await smallPhoto(Number(seed) * 1000 + (photos += 1), 320, 240);
    const { id } = value(await createBead(pen, { title: "photo" }));
    if (fault === "row-before-file") {
      const sha256 = createHash("sha256").update(bytes).digest("hex");
      const row = { sha256, format: "jpeg", bytes: bytes.length, widthPx: 320, heightPx: 240, views: [] };
      value(await addPhoto(pen, id, row as never, "face"));
      value(await receivePhoto(folder, Readable.from([bytes]), { declaredBytes: null }));
      return said(sha256);
    }
    const arriving = { dataDir: folder, source: Readable.from([bytes]), declaredBytes: bytes.length };
    const attached = await attachPhoto(db, arriving, (photo) => addPhoto(pen, id, photo, "face"));
    if (!attached.ok) throw new Error(JSON.stringify(attached.issues));
    said(attached.photo.sha256);
  },
  async sign(said) {
    const { id } = value(await createInspection(pen, prepared.jobId));
    const record = await draftRecord(db, id);
    const signing = {
      inspectionId: id,
      signerId: prepared.inspectorId,
      passphrase: prepared.passphrase,
      seen: seenDigest(record!),
      acknowledgement: "Open points seen.",
      reason: "",
      now: new Date(),
    };
    value(await signInspection(pen, signing));
    said(id);
  },
  async import(said) {
    const next = archives.shift();
    if (next === undefined) throw new Error("no archive is left: prepare more of them");
    for (const file of fault === "by-halves" ? next.halves : [next.file])
      value(await importArchive(pen, folder, readFileSync(file)));
    said(next.file);
  },
  async backup(said) {
    const target = `${folder}-copy-${seed}-${(backups += 1)}`;
    value(await makeBackup({ dataFolder: folder, target, now: new Date() }));
    said(target);
  },
};

/** What it does where nothing else is wished; of archives there are so many as are wished for. */
const order: readonly Deed[] = ["make", "save", "photo", "save", "sign", "photo"];
// Whoever kills may be stopped themselves: nobody goes on writing then.
process.once("disconnect", () => process.exit());
tell({ what: "ready" });
const wished: Deed[] = [];
process.on("message", ({ next }: Wish) => wished.push(next));
for (;;) {
  const deed = wished.shift() ?? order[chance(order.length)]!;
  tell({ what: "began", deed });
  await deeds[deed]((proof) => tell({ what: "done", deed, proof }));
  // The channel to the parent has its turn.
  await new Promise((resolve) => setImmediate(resolve));
}
