/** `npm run -s verify`: does every record still fit the log? Exit code 0: yes, 1: no, 2: it could not be asked. */
import { dataDir, databaseUrl, openDb } from "@/lib/db";
import { ledgerSentence } from "@/lib/ledger";
import { verifyRecords } from "@/lib/verify";

const use = `Verifies the records in the data folder (TOELINE_DATA, else ./data): the log's chain of hashes, everything
there is against what the log last said of it, every original photo with the pictures made from it, every frozen text, and
whether lists and figures say what follows from the beads.

  npm run -s verify            prints what was looked at, and one line per finding
  npm run -s verify -- --json  the same as JSON

Exit code: 0 everything fits, 1 something does not, 2 the records could not be read.`;

const [flag, ...rest] = process.argv.slice(2);
if (flag === "--help" || rest.length > 0 || (flag !== undefined && flag !== "--json")) {
  console.log(use);
  process.exit(flag === "--help" ? 0 : 2);
}
const db = openDb(databaseUrl());
try {
  const found = await verifyRecords(db, dataDir());
  if (flag === "--json") console.log(JSON.stringify(found, null, 2));
  else {
    const { entries, subjects, photos, frozen, signatures, derived, head, findings } = found;
    console.log(
      `Looked at ${entries} log entries, ${subjects} records, ${photos} photos, ${frozen} frozen texts, ${signatures} signatures, what follows from ${derived} beads.`,
    );
    console.log(`Newest entry: ${head ?? "none yet"}`);
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
    `The records in ${dataDir()} could not be read: ${error instanceof Error ? error.message.trim().split("\n").at(-1) : String(error)}`,
  );
  process.exitCode = 2;
} finally {
  await db.$disconnect();
}
