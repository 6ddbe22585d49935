/** `npm run -s verify`: does every record still fit the log? Exit code 0: yes, 1: no, 2: it could not be asked. */
import { existsSync, readFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { dataDir, databaseUrl, openDb, photoPlace } from "@/lib/db";
import { headSentence, readHead } from "@/lib/keys";
import { ledgerSentence } from "@/lib/ledger";
import { lastChecked, noteChecked, verifyRecords } from "@/lib/verify";
import { needSite, takeSite } from "./site-flag";
import { verifyArchive } from "./verify-archive";
import { verifyProof } from "./verify-proof";

const use = `Verifies the records in the data folder (TOELINE_DATA, else ./data): the log's chain of hashes, everything
there is against what the log last said of it, every original photo with the pictures made from it, every frozen text, every
signature, and whether lists and figures say what follows from the beads. With an archive it verifies that alone: which key
signed what in it, and when; no data folder and no account are asked for.

  npm run -s verify                   prints what was looked at, and one line per finding
  npm run -s verify -- --new          only what came since the last time it was asked so, for every day; the first time
                                      everything. Where all of it fits, the next one begins behind it
  npm run -s verify -- --json         the same as JSON
  npm run -s verify -- --head HEAD    besides, against a head of the log kept elsewhere: its file, or NUMBER:HASH
  npm run -s verify -- ARCHIVE        verifies an archive by itself
  npm run -s verify -- PROOF.json     verifies what “npm run -s prove” wrote by itself

How far it is stands on the error output where that is a screen; Ctrl-C stops it. It may run while Toeline serves. Where
several sites are served: --site NAME.

Exit code: 0 everything fits, 1 something does not, 2 it could not be read or was stopped.`;

function leave(lines: readonly string[], code: number): never {
  for (const line of lines) (code === 2 ? console.error : console.log)(line);
  process.exit(code);
}

function asked() {
  try {
    const options = {
      json: { type: "boolean" },
      new: { type: "boolean" },
      head: { type: "string" },
      help: { type: "boolean" },
    } as const;
    const { values, positionals } = parseArgs({ options, allowPositionals: true });
    if (values.help) leave([use], 0);
    if (positionals.length <= 1) return { ...values, archive: positionals[0] };
  } catch {
    // A flag there is none of: told below.
  }
  return leave([use], 2);
}

takeSite();
const { json, new: onlyNew, head: given, archive } = asked();
if (archive?.endsWith(".json") && existsSync(archive)) {
  const { lines, code } = verifyProof(archive);
  if (json) {
    console.log(JSON.stringify({ state: code === 0 ? "holds" : "does-not-hold", lines }));
    process.exit(code);
  }
  leave(lines, code);
}
if (archive !== undefined) {
  const { state, lines, code } = verifyArchive(archive);
  if (json) {
    console.log(JSON.stringify({ state, lines }));
    process.exit(code);
  }
  leave(lines, code);
}
needSite();
const noted = given === undefined ? null : readHead(existsSync(given) ? readFileSync(given, "utf8") : given);
if (noted && !noted.ok) leave(noted.issues.map(headSentence), 2);

const stop = new AbortController();
process.once("SIGINT", () => stop.abort(new Error("stopped")));
const onScreen = process.stderr.isTTY && !json;
const onProgress = (part: string, looked: number, of: number): void => {
  if (onScreen) process.stderr.write(`\r\x1b[K  ${part}: ${looked} of ${of}`);
};

const db = openDb(databaseUrl());
try {
  const since = onlyNew ? await lastChecked(db) : null;
  const watch = { onProgress, signal: stop.signal };
  const found = await verifyRecords(db, dataDir(), {
    noted: noted?.value ?? null,
    since,
    watch,
    photos: photoPlace(),
  });
  if (onScreen) process.stderr.write("\r\x1b[K");
  if (onlyNew && found.findings.length === 0 && found.end) await noteChecked(db, found.end);
  if (json) console.log(JSON.stringify(found, null, 2));
  else {
    const { entries, subjects, photos, frozen, signatures, derived, head, findings } = found;
    if (since) console.log(`Only what came behind entry ${since.seq}, which still is what it was then.`);
    console.log(
      `Looked at ${entries - (since?.seq ?? 0)} log entries, ${subjects} records, ${photos} photos, ${frozen} frozen texts, ${signatures} signatures, what follows from ${derived} beads.`,
    );
    console.log(`Newest entry: ${head ? `${entries}:${head}` : "none yet"}`);
    if (noted) console.log(`Noted elsewhere: entry ${noted.value.seq}, ${noted.value.hash}`);
    for (const one of found.remarks) console.log(`Note: ${ledgerSentence(one)}`);
    for (const one of findings) console.log(`- ${ledgerSentence(one)}`);
    console.log(
      findings.length === 0
        ? "Everything fits."
        : `${findings.length} findings. Keep a copy of the data folder before you repair anything.`,
    );
  }
  process.exitCode = found.findings.length === 0 ? 0 : 1;
} catch (error) {
  console.error(
    stop.signal.aborted
      ? "\nStopped before everything was looked at."
      : `The records in ${dataDir()} could not be read: ${error instanceof Error ? error.message.trim().split("\n").at(-1) : String(error)}`,
  );
  process.exitCode = 2;
} finally {
  await db.$disconnect();
}
