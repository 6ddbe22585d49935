/**
 * `npm test`: sets up whatever is missing, then checks everything, and ends with one summary. A step that fails does not
 * stop the later ones: one run tells all that is wrong.
 *
 * Two lanes side by side: the rooms, which keep processors busy, and all that mostly waits for one process. A word or
 * more picks steps by the beginning of their names: `npm test -- format lint`. `--deep` runs the slow properties,
 * the renders of full size and the further screens instead.
 */
import { spawn } from "node:child_process";
import { mkdirSync, readFileSync, rmSync } from "node:fs";
import path from "node:path";
import { checkNode, generateClient, installPackages, PrepareError, root } from "../lib/cli/prepare.mjs";

const out = path.join(root, "tests/.out");
const bin = (name) => path.join(root, "node_modules", name);

const buildTheApp = [
  "--input-type=module",
  "-e",
  'import("./lib/cli/prepare.mjs").then(({ buildApp }) => buildApp()).catch((error) => { console.error(error.message); process.exit(1); });',
];

const lanes = [
  [{ name: "Rooms and database", args: vitest("tests/vitest.config.ts", "rooms"), report: "rooms" }],
  [
    { name: "Formatting", args: [bin("oxfmt/bin/oxfmt"), "--check"] },
    { name: "Lint", args: [bin("oxlint/bin/oxlint"), "--deny-warnings"] },
    { name: "Dead wood", args: [path.join(root, "tests/dead-wood.mjs")] },
    {
      name: "Types",
      // Next writes the route types that the type check reads.
      before: [bin("next/dist/bin/next"), "typegen"],
      // The compiler that is a program of its own: the same rules in a quarter of the time.
      args: [bin("typescript-7/bin/tsc"), "--noEmit", "-p", "."],
    },
    {
      name: "Browser",
      before: buildTheApp,
      args: vitest("tests/e2e/vitest.config.ts", "browser"),
      report: "browser",
    },
  ],
];
const deepLanes = [
  [
    { name: "Deep", args: vitest("tests/setup/deep.config.ts", "deep"), report: "deep" },
    { name: "Bucket", args: [path.join(root, "tests/setup/real-bucket.mjs")] },
  ],
  [
    {
      name: "Browser, every screen",
      before: buildTheApp,
      args: vitest("tests/setup/deep-browser.config.ts", "deep-browser"),
      report: "deep-browser",
    },
    // The database tests once more, on a real PostgreSQL.
    {
      name: "PostgreSQL",
      args: vitest("tests/setup/postgres.config.ts", "postgresql"),
      report: "postgresql",
    },
    {
      name: "Browser on PostgreSQL",
      args: vitest("tests/setup/browser-postgres.config.ts", "browser-postgresql"),
      report: "browser-postgresql",
    },
  ],
];

function vitest(config, report) {
  return [
    bin("vitest/vitest.mjs"),
    "run",
    "-c",
    config,
    "--reporter=default",
    "--reporter=json",
    `--outputFile.json=${path.join(out, `${report}.json`)}`,
  ];
}

/** A test file run by itself, and the deep run, leave pictures for people who look. */
const shots = process.argv.includes("--deep") ? {} : { TOELINE_SHOTS: "none" };

/** Vite warns of imports without an extension, which TypeScript wants just so. */
const quietVite = { VITE_CONFIG_NATIVE_IGNORE_WARNING: "true" };

/** Runs one process to its end; its words are held back, so that two lanes do not talk at once. */
function run(args) {
  return new Promise((resolve) => {
    const env = { ...process.env, FORCE_COLOR: "0", NEXT_TELEMETRY_DISABLED: "1", ...quietVite, ...shots };
    const child = spawn(process.execPath, args, { cwd: root, env });
    const said = [];
    child.stdout.on("data", (data) => said.push(data));
    child.stderr.on("data", (data) => said.push(data));
    child.on("close", (status) => resolve({ status, said: Buffer.concat(said).toString("utf8") }));
  });
}

async function runStep(step) {
  const began = Date.now();
  const first = step.before ? await run(step.before) : { status: 0, said: "" };
  const { status, said } = first.status === 0 ? await run(step.args) : first;
  const seconds = (Date.now() - began) / 1000;
  const counts = step.report
    ? readCounts(step.report)
    : { passed: status === 0 ? 1 : 0, failed: status === 0 ? 0 : 1 };
  // A runner that died before it wrote its report has failed, whatever it counted.
  if (status !== 0 && counts.failed === 0) counts.failed = 1;
  console.log(`\n── ${step.name} (${seconds.toFixed(1)} s)\n${said.trimEnd()}`);
  return { name: step.name, seconds, ...counts };
}

function readCounts(report) {
  try {
    const { numPassedTests, numFailedTests, testResults } = JSON.parse(
      readFileSync(path.join(out, `${report}.json`), "utf8"),
    );
    return { passed: numPassedTests, failed: numFailedTests, failures: testResults.flatMap(failuresIn) };
  } catch {
    return { passed: 0, failed: 1 };
  }
}

/** What failed in a file, a line each, so that the end of the run names it: the rest may have scrolled away. */
function failuresIn({ name, message, assertionResults }) {
  const file = path.relative(root, name);
  const failed = assertionResults.filter(({ status }) => status === "failed");
  if (failed.length === 0) return message ? [`${file}: ${firstLine(message)}`] : [];
  return failed.map(
    ({ fullName, failureMessages }) => `${file} > ${fullName}: ${firstLine(failureMessages[0])}`,
  );
}
const firstLine = (text = "") => text.split("\n")[0].slice(0, 300);

const words = process.argv.slice(2).filter((word) => !word.startsWith("--"));
const isWanted = ({ name }) =>
  words.length === 0 || words.some((word) => name.toLowerCase().startsWith(word));
const wanted = (process.argv.includes("--deep") ? deepLanes : lanes).map((lane) => lane.filter(isWanted));

async function runLane(lane) {
  const results = [];
  for (const step of lane) results.push(await runStep(step));
  return results;
}

let results = [];
try {
  console.log("Setting up");
  checkNode();
  installPackages();
  generateClient();
  rmSync(out, { recursive: true, force: true });
  mkdirSync(out, { recursive: true });
  results = (await Promise.all(wanted.map(runLane))).flat();
} catch (error) {
  if (!(error instanceof PrepareError)) throw error;
  console.error(`\n  ${error.message}\n\n0 passed, 1 failed`);
  process.exit(1);
}

console.log("\n── Summary");
for (const { name, passed, failed, seconds } of results) {
  console.log(
    `  ${failed === 0 ? "ok  " : "FAIL"}  ${name.padEnd(22)} ${String(passed).padStart(5)} passed ${String(failed).padStart(4)} failed  ${seconds.toFixed(1).padStart(7)} s`,
  );
}
for (const failure of results.flatMap(({ failures }) => failures ?? [])) console.log(`  failed: ${failure}`);
const total = (key) => results.reduce((sum, result) => sum + result[key], 0);
console.log(`\n${total("passed")} passed, ${total("failed")} failed`);
process.exit(total("failed") === 0 ? 0 : 1);
