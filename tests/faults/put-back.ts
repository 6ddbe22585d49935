import { spawnSync } from "node:child_process";
import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { withChange, type Defect } from "./defects";

const root = fileURLToPath(new URL("../..", import.meta.url));
/** A test that hangs by the defect has found it too; so long at most. */
const MOST_MS = 300_000;
const ours =
  /^(app|components|lib|prisma|public|tests|demo-images|package(-lock)?\.json|tsconfig\.json|.*\.ts)$/;

/** The sources once more, where they may be spoilt; packages are those of the project. The caller removes the folder. */
export function scratchCopy(): string {
  const scratch = mkdtempSync(path.join(tmpdir(), "toeline-defects-"));
  for (const name of readdirSync(root).filter((one) => ours.test(one)))
    cpSync(path.join(root, name), path.join(scratch, name), {
      recursive: true,
      filter: (from) => !from.startsWith(path.join(root, "tests/.out")),
    });
  // One by one: what the copy does to its folder of packages, it does to names there alone.
  mkdirSync(path.join(scratch, "node_modules"));
  for (const name of readdirSync(path.join(root, "node_modules")))
    symlinkSync(path.join(root, "node_modules", name), path.join(scratch, "node_modules", name));
  return scratch;
}

export interface Outcome {
  /** Tests that failed and that passed, of those the name picks. */
  readonly failed: number;
  readonly passed: number;
  readonly seconds: number;
  /** The first words of the first failure. */
  readonly why: string;
}

interface Report {
  readonly testResults: readonly {
    readonly message: string;
    readonly assertionResults: readonly {
      readonly status: string;
      readonly failureMessages: readonly string[];
    }[];
  }[];
}

/** Runs of these files the tests whose names hold one of these. */
function runTests(scratch: string, tests: readonly Defect["test"][], most: number, deep = false): Outcome {
  const began = Date.now();
  const report = path.join(scratch, "report.json");
  rmSync(report, { force: true });
  const files = [...new Set(tests.map(({ file }) => file))];
  const names = [...new Set(tests.map(({ name }) => name.replaceAll(/[.*+?^${}()|[\]\\]/g, "\\$&")))];
  const { signal } = spawnSync(
    process.execPath,
    [
      path.join(root, "node_modules/vitest/vitest.mjs"),
      ...["run", "-c", "tests/vitest.config.ts", ...files, "-t", names.join("|")],
      ...["--reporter=json", `--outputFile.json=${report}`],
    ],
    {
      cwd: scratch,
      env: { ...process.env, ...(deep ? { TOELINE_DEEP: "1" } : {}), NODE_OPTIONS: "" },
      timeout: most,
      stdio: "ignore",
    },
  );
  const results = readReport(report).flatMap(({ assertionResults }) => assertionResults);
  const failures = results.filter(({ status }) => status === "failed");
  return {
    // One that did not end was ended by us: it hangs by the defect.
    failed: failures.length + (signal === null ? 0 : 1),
    passed: results.filter(({ status }) => status === "passed").length,
    seconds: (Date.now() - began) / 1000,
    why: (failures[0]?.failureMessages[0] ?? "").split("\n")[0]!.slice(0, 100),
  };
}

/** All tests that are to find a defect, on the sound sources: one that is red anyhow finds nothing. */
export function runSound(scratch: string, all: readonly Defect[]): Outcome {
  return runTests(
    scratch,
    all.map(({ test }) => test),
    all.length * MOST_MS,
  );
}

function readReport(file: string): Report["testResults"] {
  try {
    return (JSON.parse(readFileSync(file, "utf8")) as Report).testResults;
  } catch {
    return [];
  }
}

/** Puts a defect back, runs its test, and takes the defect away again. */
export function putBack(scratch: string, { id, change, test }: Defect): Outcome {
  const file = path.join(scratch, change.file);
  const sound = readFileSync(file, "utf8");
  const run = (text: string, deep: boolean): Outcome => {
    try {
      writeFileSync(file, text);
      return runTests(scratch, [test], MOST_MS, deep);
    } finally {
      writeFileSync(file, sound);
    }
  };
  const spoilt = withChange(sound, id, change);
  const seen = run(spoilt, false);
  if (seen.failed + seen.passed > 0) return seen;
  // A test of the deep run alone was passed over, and so was it on the sound sources.
  const before = run(sound, true);
  return before.failed > 0 || before.passed === 0 ? { ...before, failed: 0 } : run(spoilt, true);
}
