import { spawn, type ChildProcess } from "node:child_process";
import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { PATIENT_MS } from "../../setup/patience";
import { layMigrated } from "../../setup/migrated";
import { newPostgresDatabase, postgresToTest } from "../../setup/postgres-database";

const root = fileURLToPath(new URL("../../..", import.meta.url));

export interface TestServer {
  readonly url: string;
  readonly dataFolder: string;
  /** Where its database is: a URL for `openDb`. */
  readonly database: string;
  /** Of the process that runs now. */
  pid(): number;
  /** Ends the process at once, as a power cut does; `revive` starts another on the same data and port where none runs. */
  kill(): Promise<void>;
  revive(): Promise<void>;
  /** Stops the process and starts another on the same data: what a restart of the machine does. */
  restart(): Promise<void>;
  stop(): Promise<void>;
}

let asked = 0;

/**
 * A port of this worker's own hundred: two workers that asked the system for any free one could be given the same, and
 * each would then talk to, and in the end stop, the other's server. Below what the system hands out to others.
 */
export async function freePort(): Promise<number> {
  const worker = Number(process.env["VITEST_POOL_ID"] ?? 0);
  const first = 20_000 + 100 * ((2 * process.ppid + worker) % 120);
  for (let tries = 0; tries < 100; tries += 1) {
    const port = first + (asked++ % 100);
    if (await isFree(port)) return port;
  }
  throw new Error(`no port is free from ${first} on`);
}

function isFree(port: number): Promise<boolean> {
  return new Promise((resolve) => {
    const probe = createServer();
    probe.once("error", () => resolve(false));
    probe.listen(port, "127.0.0.1", () => probe.close(() => resolve(true)));
  });
}

type Env = Readonly<Record<string, string>>;

/** An empty, migrated database: a file in that folder, or one on the run's PostgreSQL where it has one. */
async function newDatabase(dataFolder: string): Promise<string> {
  if (postgresToTest() !== "") return newPostgresDatabase();
  await layMigrated(path.join(dataFolder, "toeline.db"));
  return fileIn(dataFolder);
}

const fileIn = (dataFolder: string): string => `file:${path.join(dataFolder, "toeline.db")}`;

/** A file in its own folder is what a server takes when nothing else is said. */
const saysWhere = (database: string): Env => (database.startsWith("file:") ? {} : { DATABASE_URL: database });

/** Loaded into a server that is shared: it ends with the worker that started it, however that one ends. */
const withWorker = [
  "--import",
  pathToFileURL(path.join(root, "tests/e2e/support/ends-with-worker.mjs")).href,
];

function launch(
  port: number,
  dataFolder: string,
  accounts: boolean,
  env: Env,
  isShared = false,
): ChildProcess {
  return spawn(
    process.execPath,
    [
      ...(isShared ? withWorker : []),
      "node_modules/next/dist/bin/next",
      "start",
      ...["-H", "127.0.0.1", "-p", String(port)],
      // A test on a busy machine may rest for longer than the usual five seconds between two requests.
      ...["--keepAliveTimeout", String(PATIENT_MS)],
    ],
    {
      cwd: root,
      stdio: ["ignore", "ignore", "inherit", ...(isShared ? (["ipc"] as const) : [])],
      env: {
        ...process.env,
        NODE_ENV: "production",
        TOELINE_DATA: dataFolder,
        TOELINE_ACCOUNTS: accounts ? "required" : "",
        NEXT_TELEMETRY_DISABLED: "1",
        ...env,
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

export function ended(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return Promise.resolve();
  return new Promise((resolve) => {
    child.once("exit", () => resolve());
    child.kill("SIGTERM");
    setTimeout(() => child.kill("SIGKILL"), 5000).unref();
  });
}

/**
 * The built server on an empty, migrated data folder of its own; with `accounts` it asks everybody to sign in. `env` may name
 * another database and another place of photos. `npm test` has built the pages before.
 */
export async function startServer(
  dataFolder = mkdtempSync(path.join(tmpdir(), "toeline-e2e-")),
  { accounts = false, env: more = {} as Env } = {},
): Promise<TestServer> {
  // A folder that was made before is served as it is, and stays.
  const isOld = existsSync(path.join(dataFolder, "toeline.db"));
  const database = more["DATABASE_URL"] ?? (isOld ? fileIn(dataFolder) : await newDatabase(dataFolder));
  const env = { ...saysWhere(database), ...more };
  const port = await freePort();
  const url = `http://127.0.0.1:${port}`;
  let child = launch(port, dataFolder, accounts, env);
  await untilServing(url, child);
  return {
    url,
    dataFolder,
    database,
    pid: () => child.pid ?? 0,
    async kill() {
      // At once: asked to end first, it might still finish what it is doing.
      const gone = new Promise<void>((resolve) => child.once("exit", () => resolve()));
      child.kill("SIGKILL");
      await gone;
    },
    async revive() {
      if (child.exitCode === null && child.signalCode === null) return;
      child = launch(port, dataFolder, accounts, env);
      await untilServing(url, child);
    },
    async restart() {
      await ended(child);
      child = launch(port, dataFolder, accounts, env);
      await untilServing(url, child);
    },
    async stop() {
      await ended(child);
      if (!isOld) rmSync(dataFolder, { recursive: true, force: true });
    },
  };
}

export type SharedServer = Pick<TestServer, "url" | "dataFolder" | "database">;
let shared: Promise<SharedServer & { readonly child: ChildProcess }> | null = null;

/**
 * This worker's server, for one file after the other: for files that ask for no more than beads or gauges of their own,
 * whatever else is there; a hand-in's page offers whatever beads there are, so the course has its own. To start a server, and to load its pages into it, costs as much as most files do with it. No
 * file stops it: it ends with the worker.
 */
export async function sharedServer(): Promise<SharedServer> {
  const found = await (shared ??= startShared());
  // A file that took the server down must not take the next file with it.
  return found.child.exitCode === null && found.child.signalCode === null ? found : (shared = startShared());
}

async function startShared() {
  const dataFolder = mkdtempSync(path.join(tmpdir(), "toeline-e2e-"));
  const database = await newDatabase(dataFolder);
  const port = await freePort();
  const url = `http://127.0.0.1:${port}`;
  const child = launch(port, dataFolder, false, saysWhere(database), true);
  await untilServing(url, child);
  return { url, dataFolder, database, child };
}
