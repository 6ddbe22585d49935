/**
 * `npm start`: sets up whatever is missing, then serves on this machine only. `npm run dev`: the same with Next's
 * development server for people who carry on the work.
 */
import { spawn } from "node:child_process";
import { createServer } from "node:net";
import { hostname } from "node:os";
import { isManySites, loadSites, SitesError } from "../sites/sites.mjs";
import { closeToOthers } from "./close-to-others.mjs";
import { countOwners } from "./count-owners.mjs";
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
import { fillSites, prepareSites } from "./prepare-sites.mjs";

/** 127.0.0.1 unless somebody says otherwise; anything else can be reached by others and asks everybody to sign in. */
const HOST = process.env.TOELINE_HOST || "127.0.0.1";
const loopback = /^(127\.\d+\.\d+\.\d+|localhost|::1)$/.test(HOST);
const many = isManySites();
// Whoever has a name of their own among several is somebody, wherever it listens.
const accounts = many || !loopback || process.env.TOELINE_ACCOUNTS === "required";
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

function serve(port, shut) {
  const next = ["node_modules/next/dist/bin/next", dev ? "dev" : "start", "-H", HOST, "-p", String(port)];
  const sites = { PORT: String(port), TOELINE_SHUT: JSON.stringify(Object.fromEntries(shut)) };
  const child = spawn(process.execPath, many ? ["lib/cli/serve-sites.mjs"] : next, {
    cwd: root,
    stdio: ["ignore", dev ? "inherit" : "ignore", "inherit"],
    env: {
      ...process.env,
      TOELINE_DATA: dataFolder(),
      TOELINE_ACCOUNTS: accounts ? "required" : "",
      NEXT_TELEMETRY_DISABLED: "1",
      ...(many && sites),
    },
  });
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

/** Whoever can be reached from the network without anybody who may open accounts would be open to all or shut to all. */
async function requireOwner() {
  if ((await countOwners(dataFolder(), serverUrl())) > 0) return;
  throw new PrepareError(
    `Toeline does not listen on ${HOST} while nobody has an account. Open the owner's first:\n` +
      '    npm run -s account -- --role owner --name "Your name" --sign-in yourname\n' +
      "  then start again. Without TOELINE_HOST it listens on this machine only and asks for none.",
  );
}

/** Sets up the one installation there is. */
async function prepareOne() {
  // A file has one server; a PostgreSQL has as many as it likes.
  if (serverUrl() === null && (await lockForStart(dataFolder())) === null)
    throw new PrepareError(inUse(dataFolder()));
  await migrate();
  closeToOthers(dataFolder());
  if (accounts) await requireOwner();
  if (!dev) await buildApp();
  fillDemo();
}

/** Sets up every site; which stay shut, and why. One at least must be open. */
async function prepareMany() {
  if (dev)
    throw new PrepareError(
      "npm run dev serves one site: leave TOELINE_SITES out and name its folder by TOELINE_DATA.",
    );
  const sites = loadSites(process.env, root);
  const shut = await prepareSites(sites);
  if (shut.size < sites.length) await buildApp();
  const open = sites.map(({ name }) => name).filter((name) => !shut.has(name));
  for (const [name, why] of fillSites(open)) shut.set(name, why);
  if (shut.size < sites.length) return { sites, shut };
  throw new PrepareError(
    ["No site can be opened.", ...[...shut].map(([name, why]) => `Site ${name}: ${why}`)].join("\n  "),
  );
}

function saySites({ sites, shut }, port) {
  for (const { name, hosts, origin } of sites)
    if (!shut.has(name)) console.log(`  Site ${name}  ${origin ?? `http://${hosts[0]}:${port}`}`);
}

function sayWhere(port) {
  console.log(`  Data folder  ${dataFolder()}`);
  if (serverUrl() !== null) console.log("  Database     PostgreSQL, as DATABASE_URL says");
  if (!many) console.log(`  Open         http://${loopback ? HOST : hostname()}:${port}`);
  if (accounts) console.log("  Accounts     everybody signs in; people are kept under People");
  if (!loopback)
    console.log(
      "  Network      passphrases travel unencrypted over http: use a trusted network, or put TLS in front",
    );
  console.log("  Stop         Ctrl-C");
}

try {
  console.log("Toeline");
  checkNode();
  installPackages();
  generateClient();
  const found = many ? await prepareMany() : { sites: [], shut: new Map() };
  if (!many) await prepareOne();
  const port = await freePort();
  if (port !== WANTED_PORT) console.log(`  Port ${WANTED_PORT} is taken; using ${port} instead.`);
  const child = serve(port, found.shut);
  if (await untilServing(port, child)) {
    saySites(found, port);
    sayWhere(port);
  }
} catch (error) {
  if (!(error instanceof PrepareError || error instanceof SitesError)) throw error;
  console.error(`\n  ${error.message}`);
  process.exit(1);
}
