/** The list of ten thousand beads with what waits above it, beside the very same SQL on the bare driver (bench:grow). */
import { execFile } from "node:child_process";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import type { Figure } from "./figures";

const BEADS = 10_000;

interface Timed {
  readonly work: string;
  readonly ours: number;
  readonly bare: number | null;
}

export async function listFigures(): Promise<readonly Figure[]> {
  const { stdout } = await promisify(execFile)(
    process.execPath,
    ["--conditions=react-server", "--import", "tsx", "tests/lib/find/bench-grow.ts", "--list", String(BEADS)],
    { cwd: fileURLToPath(new URL("../..", import.meta.url)), maxBuffer: 2 ** 24 },
  );
  const timed = JSON.parse(stdout.trim().split("\n").at(-1) ?? "[]") as readonly Timed[];
  return timed.map(({ work, ours, bare }) => ({
    work: `${work}, ${BEADS} beads, processor`,
    ours,
    unit: "ms",
    baseline: { name: "the same SQL, bare driver", value: bare ?? NaN },
    goal: null,
  }));
}
