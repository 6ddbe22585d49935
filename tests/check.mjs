/**
 * `npm run check -- PATH ...`: format, lint, types and the tests of what was changed, all at once and nothing built.
 * Without a path, what git calls changed. `npm test` checks everything; this is for the minutes between.
 */
import { spawn, spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync } from "node:fs";
import path from "node:path";
import { root } from "../lib/cli/prepare.mjs";

const bin = (name) => path.join(root, "node_modules", name);
const isCode = (file) => /\.(ts|tsx|mjs)$/.test(file);
const isTest = (file) => /^tests\/.*\.test\.tsx?$/.test(file) && !/^tests\/e2e\//.test(file);

function changedFiles() {
  const git = (...args) => spawnSync("git", args, { cwd: root, encoding: "utf8" }).stdout.split("\n");
  const names = [...git("diff", "--name-only", "HEAD"), ...git("ls-files", "--others", "--exclude-standard")];
  return names.filter((name) => name !== "" && existsSync(path.join(root, name)));
}

function filesUnder(place) {
  const full = path.join(root, place);
  if (!statSync(full).isDirectory()) return [place];
  return readdirSync(full).flatMap((name) => filesUnder(path.join(place, name)));
}

/** Every test file that names one of the files, or the door of its room, in an import of its own. */
function testsOf(files) {
  const names = new Set(
    files.filter(isCode).flatMap((file) => {
      const bare = file.replace(/\.(ts|tsx|mjs)$/, "");
      const room = /^lib\/[^/]+/.exec(file)?.[0];
      return [`@/${bare}`, ...(room === undefined ? [] : [`@/${room}`])];
    }),
  );
  const mirrored = files.map((file) => `tests/${file.replace(/\.(ts|tsx|mjs)$/, "")}.test.ts`);
  const rooms = new Set(files.map((file) => /^lib\/[^/]+/.exec(file)?.[0]).filter(Boolean));
  return filesUnder("tests")
    .filter(isTest)
    .filter((test) => {
      if (files.includes(test) || mirrored.includes(test)) return true;
      const text = readFileSync(path.join(root, test), "utf8");
      const imports = [...text.matchAll(/from "(@\/[^"]+)"/g)].map(([, name]) => name);
      const isOwn = [...rooms].some((room) => test.startsWith(`tests/${room}/`));
      return imports.some(
        (name) =>
          names.has(name) &&
          (isOwn || files.some((file) => name === `@/${file.replace(/\.(ts|tsx|mjs)$/, "")}`)),
      );
    });
}

function step(name, args) {
  const began = Date.now();
  return new Promise((resolve) => {
    const child = spawn(process.execPath, args, {
      cwd: root,
      env: { ...process.env, FORCE_COLOR: "0", TOELINE_QUICK: "1" },
    });
    let said = "";
    child.stdout.on("data", (data) => (said += data));
    child.stderr.on("data", (data) => (said += data));
    child.on("close", (status) => resolve({ name, status, said, seconds: (Date.now() - began) / 1000 }));
  });
}

const asked = process.argv.slice(2).map((name) => path.relative(root, path.resolve(name)));
const files = (asked.length > 0 ? asked.flatMap(filesUnder) : changedFiles()).filter(
  (name) => !name.startsWith("."),
);
if (files.length === 0) {
  console.log("Nothing is changed. Name a path: npm run check -- lib/accept");
  process.exit(0);
}
mkdirSync(path.join(root, "tests/.out"), { recursive: true });
const tests = testsOf(files);
const code = files.filter(isCode);
const steps = [
  step("Formatting", [bin("oxfmt/bin/oxfmt"), "--check", "--no-error-on-unmatched-pattern", ...files]),
  ...(code.length > 0
    ? [
        step("Lint", [bin("oxlint/bin/oxlint"), "--deny-warnings", ...code]),
        step("Types", [
          bin("typescript-7/bin/tsc"),
          "--noEmit",
          "-p",
          ".",
          "--tsBuildInfoFile",
          "tests/.out/types.tsbuildinfo",
        ]),
      ]
    : []),
  ...(tests.length > 0
    ? [
        step(`${tests.length} test files`, [
          bin("vitest/vitest.mjs"),
          "run",
          "-c",
          "tests/vitest.config.ts",
          ...tests,
        ]),
      ]
    : []),
];
const results = await Promise.all(steps);
for (const { name, status, said, seconds } of results) {
  if (status !== 0) console.log(`\n── ${name}\n${said}`);
  console.log(`  ${status === 0 ? "ok  " : "FAIL"}  ${name.padEnd(20)} ${seconds.toFixed(1).padStart(6)} s`);
}
process.exit(results.every(({ status }) => status === 0) ? 0 : 1);
