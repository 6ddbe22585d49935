/** `npm run -s prove -- 12 2`: shows to others that a signed record is in the log of this installation. */
import { readFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { databaseUrl, openDb } from "@/lib/db";
import { proofSentence, proveEntry, readProof, type LogProof } from "@/lib/verify";

const use = `Prints, as JSON, that a signed record is in the log of this installation as far as it has come, signed by its key: the
entry of the record, the path from it to the root of the log (RFC 9162, 2.1), and the root.

  npm run -s prove -- 12 2 > proof.json                    inspection 12, revision 2
  npm run -s prove -- 12 2 --since EARLIER > proof.json    besides, that the log began with what an earlier proof spoke of
  npm run -s verify -- proof.json                          on any machine, without this data folder

TOELINE_DATA names the data folder, else ./data.`;

function leave(text: string, code: number): never {
  (code === 0 ? console.log : console.error)(text);
  process.exit(code);
}

function asked() {
  try {
    const options = { since: { type: "string" }, help: { type: "boolean" } } as const;
    const { values, positionals } = parseArgs({ options, allowPositionals: true });
    if (values.help) leave(use, 0);
    const [number, revision] = positionals.map(Number);
    if (Number.isInteger(number) && Number.isInteger(revision)) return { ...values, number, revision };
  } catch {
    // A flag there is none of: told below.
  }
  return leave(use, 2);
}

function earlier(file: string): LogProof["checkpoint"] {
  const read = readProof(readFileSync(file, "utf8"));
  return read.ok ? read.value.checkpoint : leave(`${file}: ${read.issues.map(proofSentence).join(" ")}`, 1);
}

const { number, revision, since } = asked();
const before = since === undefined ? null : earlier(since);
const db = openDb(databaseUrl());
try {
  const where = { inspection: { number: number ?? 0 }, revision: revision ?? 0 };
  const row = await db.signedRevision.findFirst({ where, select: { id: true } });
  const pen = { db, by: "system" };
  const proof = await proveEntry(pen, `signed:${row?.id ?? "none"}`, new Date(), before);
  if (proof.ok) console.log(JSON.stringify(proof.value, null, 2));
  else console.error(proof.issues.map(proofSentence).join(" "));
  process.exitCode = proof.ok ? 0 : 1;
} finally {
  await db.$disconnect();
}
