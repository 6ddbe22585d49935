/** `npm run -s head`: the log's newest entry, signed, to be kept outside this machine and given back to a later verify. */
import { databaseUrl, openDb } from "@/lib/db";
import { signedHead } from "@/lib/keys";
import { needSite } from "./site-flag";

const use = `Prints the head of the log (number, hash, signature by this installation's key) as JSON.

  npm run -s head > head-2026-11-26.json
  npm run -s verify -- --head head-2026-11-26.json

Keep it where this machine cannot reach it: mailed, on another disk, on paper. A later verify with it proves that
nothing before it was changed. TOELINE_DATA names the data folder, else ./data; where several sites are served, --site NAME the site.`;

needSite();
if (process.argv.length > 2) {
  console.log(use);
  process.exit(process.argv[2] === "--help" ? 0 : 2);
}
const db = openDb(databaseUrl());
try {
  const head = await signedHead({ db, by: "system" }, new Date());
  if (head) console.log(JSON.stringify(head, null, 2));
  else {
    console.error("The log is empty, so there is no head yet.");
    process.exitCode = 1;
  }
} catch (error) {
  console.error(
    `The log could not be read: ${error instanceof Error ? error.message.trim().split("\n").at(-1) : String(error)}`,
  );
  process.exitCode = 2;
} finally {
  await db.$disconnect();
}
