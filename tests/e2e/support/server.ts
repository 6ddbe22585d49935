import { spawn, type ChildProcess } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer, type AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { PATIENT_MS } from "../../setup/patience";
import { applyMigrations } from "@/lib/cli/schema-engine.mjs";

const root = fileURLToPath(new URL("../../..", import.meta.url));

export interface TestServer {
  readonly url: string;
  readonly dataFolder: string;
  /** Ends the process at once, as a power cut does; `revive` starts another on the same data and port where none runs. */
  kill(): Promise<void>;
  revive(): Promise<void>;
  /** Stops the process and starts another on the same data: what a restart of the machine does. */
  restart(): Promise<void>;
  stop(): Promise<void>;
}

async function freePort(): Promise<number> {
  return new Promise((resolve) => {
    const probe = createServer();
    probe.listen(0, "127.0.0.1", () => {
      const { port } = probe.address() as AddressInfo;
      probe.close(() => resolve(port));
    });
  });
}

function launch(port: number, dataFolder: string, accounts: boolean): ChildProcess {
  return spawn(
    process.execPath,
    ["node_modules/next/dist/bin/next", "start", "-H", "127.0.0.1", "-p", String(port)],
    {
      cwd: root,
      stdio: ["ignore", "ignore", "inherit"],
      env: {
        ...process.env,
        NODE_ENV: "production",
        TOELINE_DATA: dataFolder,
        TOELINE_ACCOUNTS: accounts ? "required" : "",
        NEXT_TELEMETRY_DISABLED: "1",
      },
    },
  );
}

async function untilServing(url: string, child: ChildProcess): Promise<void> {
  const until = Date.now() + PATIENT_MS;
  while (Date.now() < until) {
    if (child.exitCode !== null) throw new Error(`the server ended with code ${child.exitCode}`);
    const answer = await fetch(`${url}/api/health`).catch(() => null);
    if (answer?.ok) return;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error(`the server did not answer within ${PATIENT_MS / 1000} s`);
}

function ended(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return Promise.resolve();
  return new Promise((resolve) => {
    child.once("exit", () => resolve());
    child.kill("SIGTERM");
    setTimeout(() => child.kill("SIGKILL"), 5000).unref();
  });
}

/** The built server on an empty, migrated data folder of its own; with `accounts` it asks everybody to sign in. `npm test` has built the pages before. */
export async function startServer(
  dataFolder = mkdtempSync(path.join(tmpdir(), "toeline-e2e-")),
  { accounts = false } = {},
): Promise<TestServer> {
  await applyMigrations(`file:${path.join(dataFolder, "toeline.db")}`);
  const port = await freePort();
  const url = `http://127.0.0.1:${port}`;
  let child = launch(port, dataFolder, accounts);
  await untilServing(url, child);
  return {
    url,
    dataFolder,
    async kill() {
      const gone = ended(child);
      child.kill("SIGKILL");
      await gone;
    },
    async revive() {
      if (child.exitCode === null && child.signalCode === null) return;
      child = launch(port, dataFolder, accounts);
      await untilServing(url, child);
    },
    async restart() {
      await ended(child);
      child = launch(port, dataFolder, accounts);
      await untilServing(url, child);
    },
    async stop() {
      await ended(child);
      rmSync(dataFolder, { recursive: true, force: true });
    },
  };
}
