/**
 * `npm test`: sets up whatever is missing, then checks everything, and ends with one summary.
 * A step that fails does not stop the later ones: one run tells all that is wrong.
 */
import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, rmSync } from "node:fs";
import path from "node:path";
import {
  buildApp,
  checkNode,
  generateClient,
  installPackages,
  PrepareError,
  root,
} from "../lib/cli/prepare.mjs";

const out = path.join(root, "tests/.out");
const bin = (name) => path.join(root, "node_modules", name);

const steps = [
  { name: "Formatting", args: [bin("prettier/bin/prettier.cjs"), "--check", "--log-level", "warn", "."] },
  {
    name: "Lint",
    args: [bin("eslint/bin/eslint.js"), "-c", "tests/setup/eslint.config.mjs", "--max-warnings", "0", "."],
  },
  { name: "Types", args: [bin("typescript/bin/tsc"), "--noEmit", "-p", "."] },
  { name: "Rooms and database", args: vitest("tests/vitest.config.ts", "rooms"), report: "rooms" },
  { name: "Browser", args: vitest("tests/e2e/vitest.config.ts", "browser"), report: "browser" },
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

function runStep(step) {
  console.log(`\n── ${step.name}`);
  const began = Date.now();
  const { status } = spawnSync(process.execPath, step.args, {
    cwd: root,
    stdio: "inherit",
    env: { ...process.env, FORCE_COLOR: "0", NEXT_TELEMETRY_DISABLED: "1" },
  });
  const seconds = (Date.now() - began) / 1000;
  const counts = step.report
    ? readCounts(step.report)
    : { passed: status === 0 ? 1 : 0, failed: status === 0 ? 0 : 1 };
  // A runner that died before it wrote its report has failed, whatever it counted.
  if (status !== 0 && counts.failed === 0) counts.failed = 1;
  return { name: step.name, seconds, ...counts };
}

function readCounts(report) {
  try {
    const { numPassedTests, numFailedTests } = JSON.parse(
      readFileSync(path.join(out, `${report}.json`), "utf8"),
    );
    return { passed: numPassedTests, failed: numFailedTests };
  } catch {
    return { passed: 0, failed: 1 };
  }
}

try {
  console.log("Setting up");
  checkNode();
  installPackages();
  generateClient();
  rmSync(out, { recursive: true, force: true });
  mkdirSync(out, { recursive: true });
  // Next writes the route types that the type check reads while it builds.
  buildApp();
} catch (error) {
  if (!(error instanceof PrepareError)) throw error;
  console.error(`\n  ${error.message}\n\n0 passed, 1 failed`);
  process.exit(1);
}

const only = process.argv.slice(2);
const results = steps
  .filter((step) => only.length === 0 || only.some((word) => step.name.toLowerCase().startsWith(word)))
  .map(runStep);

console.log("\n── Summary");
for (const { name, passed, failed, seconds } of results) {
  console.log(
    `  ${failed === 0 ? "ok  " : "FAIL"}  ${name.padEnd(20)} ${String(passed).padStart(5)} passed ${String(failed).padStart(4)} failed  ${seconds.toFixed(1).padStart(7)} s`,
  );
}
const total = (key) => results.reduce((sum, result) => sum + result[key], 0);
console.log(`\n${total("passed")} passed, ${total("failed")} failed`);
process.exit(total("failed") === 0 ? 0 : 1);
