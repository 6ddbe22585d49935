/** `npm run -s check-data`: explains everything in the data folder that does not belong together. */
import { parseArgs } from "node:util";
import { dataDir, databaseUrl, isAllInFolder, openDb } from "@/lib/db";
import { checkData, dataSentence, mendData } from "@/lib/mend";
import { inUse, lockForStart } from "./data-lock.mjs";
import { needSite } from "./site-flag";

const use = `Looks at everything in the data folder (TOELINE_DATA, else ./data): every page of the database, every record
against the log, every photo with what was made from it, and what a crash or somebody's hand left behind. One line for
each finding: what it is, and the way out. While Toeline serves the folder, uploads on their way are left out.

  npm run -s check-data              looks, and changes nothing
  npm run -s check-data -- --mend    besides puts right what can be without losing or inventing anything; stop Toeline first

Where several sites are served: --site NAME.
Exit code: 0 everything fits, 1 something does not, 2 it could not be looked at.`;

function asked(): boolean {
  try {
    const { values } = parseArgs({ options: { mend: { type: "boolean" }, help: { type: "boolean" } } });
    if (!values.help) return values.mend ?? false;
    console.log(use);
  } catch {
    console.error(use);
    process.exit(2);
  }
  process.exit(0);
}

needSite();
const mend = asked();
if (!isAllInFolder()) {
  console.error(
    "This looks through a data folder that holds everything. For a PostgreSQL or a bucket: npm run -s verify",
  );
  process.exit(2);
}
const folder = dataDir();
const lock = await lockForStart(folder);
if (mend && lock === null) {
  console.error(`${inUse(folder)}. Nothing was mended.`);
  process.exit(2);
}
const db = openDb(databaseUrl());
try {
  const { mended, left } = mend
    ? await mendData(db, folder, new Date())
    : { mended: [], left: await checkData(db, folder, { isServed: lock === null }) };
  for (const one of mended) console.log(`- ${dataSentence(one, true)}`);
  for (const one of left) console.log(`- ${dataSentence(one)}`);
  if (left.length > 0) {
    console.log(`${left.length === 1 ? "One finding stays" : `${left.length} findings stay`}.`);
    process.exitCode = 1;
  } else console.log("Everything fits.");
} catch (error) {
  console.error(
    `The data folder ${folder} could not be looked at: ${error instanceof Error ? error.message.trim().split("\n").at(-1) : String(error)}`,
  );
  process.exitCode = 2;
} finally {
  await db.$disconnect();
  lock?.();
}
