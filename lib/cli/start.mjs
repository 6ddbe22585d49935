/**
 * `npm start`: sets up whatever is missing, then serves on this machine only. `npm run dev`: the same with Next's
 * development server for people who carry on the work.
 */
import { spawn } from "node:child_process";
import { createServer } from "node:net";
import { hostname } from "node:os";
import path from "node:path";
import { closeToOthers } from "./close-to-others.mjs";
import { inUse, lockForStart } from "./data-lock.mjs";
import {
  buildApp,
  checkNode,
  dataFolder,
  fillDemo,
  generateClient,
  installPackages,
  migrate,
  PrepareError,
  root,
  serverUrl,
} from "./prepare.mjs";

/** 127.0.0.1 unless somebody says otherwise; anything else can be reached by others and asks everybody to sign in. */
const HOST = process.env.TOELINE_HOST || "127.0.0.1";
const loopback = /^(127\.\d+\.\d+\.\d+|localhost|::1)$/.test(HOST);
const accounts = !loopback || process.env.TOELINE_ACCOUNTS === "required";
/** How we ourselves reach it. */
const NEAR = loopback ? HOST : "127.0.0.1";
const WANTED_PORT = Number(process.env.PORT) || 3000;
const dev = process.argv.includes("--dev");

function isFree(port) {
  return new Promise((resolve) => {
    const probe = createServer();
    probe.once("error", () => resolve(false));
    probe.listen(port, HOST, () => probe.close(() => resolve(true)));
  });
}

async function freePort() {
  for (let port = WANTED_PORT; port < WANTED_PORT + 50; port += 1) {
    if (await isFree(port)) return port;
  }
  throw new PrepareError(
    `Ports ${WANTED_PORT} to ${WANTED_PORT + 49} are all taken. Free one, or choose: PORT=8080 npm start`,
  );
}

async function untilServing(port, child) {
  while (child.exitCode === null) {
    const answer = await fetch(`http://${NEAR}:${port}/api/health`).catch(() => null);
    if (answer?.ok) return true;
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
  return false;
}

function serve(port) {
  const mode = dev ? ["dev"] : ["start"];
  const child = spawn(
    process.execPath,
    ["node_modules/next/dist/bin/next", ...mode, "-H", HOST, "-p", String(port)],
    {
      cwd: root,
      stdio: ["ignore", dev ? "inherit" : "ignore", "inherit"],
      env: {
        ...process.env,
        TOELINE_DATA: dataFolder(),
        TOELINE_ACCOUNTS: accounts ? "required" : "",
        NEXT_TELEMETRY_DISABLED: "1",
      },
    },
  );
  let stopping = false;
  const stop = () => {
    if (stopping) return;
    stopping = true;
    console.log("\n  Stopping …");
    child.kill("SIGTERM");
    setTimeout(() => child.kill("SIGKILL"), 5000).unref();
  };
  process.on("SIGINT", stop);
  process.on("SIGTERM", stop);
  child.on("exit", (code) => {
    if (stopping) console.log("  Stopped. Everything saved is in " + dataFolder());
    process.exit(stopping ? 0 : (code ?? 1));
  });
  return child;
}

const OWNERS = `SELECT count(*) AS n FROM "Person" WHERE "role" = 'owner' AND "userId" IS NOT NULL AND "removedAt" IS NULL`;

async function countOwners() {
  const url = serverUrl();
  if (url !== null) {
    const { PrismaPg } = await import("@prisma/adapter-pg");
    const connection = await new PrismaPg({ connectionString: url, max: 1 }).connect();
    try {
      const { rows } = await connection.queryRaw({ sql: OWNERS, args: [], argTypes: [] });
      return Number(rows[0]?.[0] ?? 0);
    } finally {
      await connection.dispose();
    }
  }
  const { default: Database } = await import("better-sqlite3");
  const file = new Database(path.join(dataFolder(), "toeline.db"), { readonly: true });
  try {
    return file.prepare(OWNERS).get().n;
  } finally {
    file.close();
  }
}

/** Whoever can be reached from the network without anybody who may open accounts would be open to all or shut to all. */
async function requireOwner() {
  if ((await countOwners()) > 0) return;
  throw new PrepareError(
    `Toeline does not listen on ${HOST} while nobody has an account. Open the owner's first:\n` +
      '    npm run -s account -- --role owner --name "Your name" --sign-in yourname\n' +
      "  then start again. Without TOELINE_HOST it listens on this machine only and asks for none.",
  );
}

try {
  console.log("Toeline");
  checkNode();
  installPackages();
  generateClient();
  // A file has one server; a PostgreSQL has as many as it likes.
  if (serverUrl() === null && (await lockForStart(dataFolder())) === null)
    throw new PrepareError(inUse(dataFolder()));
  await migrate();
  closeToOthers(dataFolder());
  if (accounts) await requireOwner();
  if (!dev) await buildApp();
  fillDemo();
  const port = await freePort();
  if (port !== WANTED_PORT) console.log(`  Port ${WANTED_PORT} is taken; using ${port} instead.`);
  const child = serve(port);
  if (await untilServing(port, child)) {
    console.log(`  Data folder  ${dataFolder()}`);
    if (serverUrl() !== null) console.log("  Database     PostgreSQL, as DATABASE_URL says");
    console.log(`  Open         http://${loopback ? HOST : hostname()}:${port}`);
    if (accounts) console.log("  Accounts     everybody signs in; people are kept under People");
    if (!loopback)
      console.log(
        "  Network      passphrases travel unencrypted over http: use a trusted network, or put TLS in front",
      );
    console.log("  Stop         Ctrl-C");
  }
} catch (error) {
  if (!(error instanceof PrepareError)) throw error;
  console.error(`\n  ${error.message}`);
  process.exit(1);
}
