import { spawn } from "node:child_process";
import { setPriority } from "node:os";
import path from "node:path";
import type { Db } from "@/lib/db";
import { isDue } from "./nightly";
import { lastBackup, nightlyPlan } from "./nightly-plan";

const LOOK_MS = 5 * 60_000;

/**
 * Makes a backup in a process of its own, so that whoever is served meanwhile does not wait: copying and hashing thousands
 * of photos takes minutes. What it says at its end; the outcome is kept by the command itself (`lib/cli/backup.ts`).
 */
export function backUpAside(
  dataFolder: string,
  args: readonly string[],
): Promise<{ ok: boolean; said: string }> {
  const root = process.cwd();
  const script = path.join(/* turbopackIgnore: true */ root, "lib/cli/backup.ts");
  const child = spawn(process.execPath, ["--conditions=react-server", "--import", "tsx", script, ...args], {
    cwd: root,
    env: { ...process.env, TOELINE_DATA: dataFolder, NODE_OPTIONS: "" },
    stdio: ["ignore", "pipe", "pipe"],
  });
  return new Promise((resolve) => {
    const said: Buffer[] = [];
    for (const stream of [child.stdout, child.stderr]) stream.on("data", (part: Buffer) => said.push(part));
    child.on("error", ({ message }) => resolve({ ok: false, said: message }));
    child.on("close", (code) =>
      resolve({ ok: code === 0, said: Buffer.concat(said).toString("utf8").trim().slice(-2000) }),
    );
    try {
      if (child.pid !== undefined) setPriority(child.pid, 10);
    } catch {
      // It is gone already, or this system has no priorities.
    }
  });
}

/** On globalThis, because a bundle may hold this module more than once. */
const watched = globalThis as { toelineNights?: NodeJS.Timeout };

/** Makes the nightly backup when it is due, as long as this process serves. */
export function watchNights(db: () => Db, dataFolder: () => string): void {
  let running = false;
  const look = async () => {
    if (running) return;
    running = true;
    try {
      const plan = await nightlyPlan(db());
      const last = plan && (await lastBackup(db()));
      if (plan && isDue(new Date(), plan.hour, last ? new Date(last.triedAt) : new Date(plan.since)))
        await backUpAside(dataFolder(), ["--nightly"]);
    } catch {
      // A database that does not answer just now is asked again in five minutes.
    } finally {
      running = false;
    }
  };
  watched.toelineNights ??= setInterval(() => void look(), LOOK_MS).unref();
}
