/**
 * Brings a fresh clone to the point where it can serve or be tested. Node built-ins only: it runs before anything is
 * installed. Every step compares a fingerprint of what it was made from with the one it left last time, says what it
 * does, and does nothing when nothing has changed.
 */
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { engineOfUrl, postgresSchemaPath, schemaPath, writePostgresSchema } from "./schemas.mjs";

export const root = fileURLToPath(new URL("../..", import.meta.url));

/** The one folder that holds database and photos; backing it up is copying it. */
export function dataFolder() {
  return path.resolve(root, process.env.TOELINE_DATA || "data");
}

export class PrepareError extends Error {}

function say(text) {
  console.log(`  ${text}`);
}

function fingerprint(entries) {
  const hash = createHash("sha256");
  for (const entry of entries) addToHash(hash, entry);
  return hash.digest("hex");
}

function addToHash(hash, entry) {
  if (entry.startsWith("=")) return void hash.update(entry);
  const full = path.join(root, entry);
  if (!existsSync(full)) return;
  if (!statSync(full).isDirectory()) return void hash.update(`${entry}\0`).update(readFileSync(full));
  for (const name of readdirSync(full).sort()) {
    if (name !== "generated" && name !== "node_modules") addToHash(hash, path.join(entry, name));
  }
}

function isCurrent(stampFile, stamp) {
  const full = path.join(root, stampFile);
  return existsSync(full) && readFileSync(full, "utf8") === stamp;
}

function leaveStamp(stampFile, stamp) {
  mkdirSync(path.dirname(path.join(root, stampFile)), { recursive: true });
  writeFileSync(path.join(root, stampFile), stamp);
}

function run(command, args, { env = {}, onFailure }) {
  const { status, error } = spawnSync(command, args, {
    cwd: root,
    stdio: "inherit",
    env: { ...process.env, ...env },
    shell: process.platform === "win32" && command === "npm",
  });
  if (error || status !== 0) throw new PrepareError(onFailure);
}

/** Prisma's CLI asks for an engine binary by path and never starts it for what we do: any executable will do. */
const withoutEngineDownload = {
  PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
  PRISMA_HIDE_UPDATE_MESSAGE: "1",
  CHECKPOINT_DISABLE: "1",
};

/** node-gyp compiles better-sqlite3 where no prebuilt binary can be fetched; Node's own headers save it a download. */
function nodeHeaders() {
  const prefix = path.resolve(process.execPath, "../..");
  return existsSync(path.join(prefix, "include/node/node.h")) ? { npm_config_nodedir: prefix } : {};
}

export function checkNode() {
  const [major = 0, minor = 0] = process.versions.node.split(".").map(Number);
  if (major > 20 || (major === 20 && minor >= 19)) return;
  throw new PrepareError(
    `Node ${process.versions.node} is too old: install Node 20.19 or newer, then try again.`,
  );
}

export function installPackages() {
  const stamp = fingerprint([
    "package-lock.json",
    `=${process.versions.modules} ${process.platform} ${process.arch}`,
  ]);
  if (isCurrent("node_modules/.toeline", stamp)) return;
  say("Installing packages (about two minutes the first time) …");
  run("npm", ["ci", "--include=dev", "--no-audit", "--no-fund", "--loglevel=error"], {
    env: { ...withoutEngineDownload, ...nodeHeaders() },
    onFailure:
      "Packages could not be installed. Check that this machine reaches the npm registry (and has make and g++ where no ready-made SQLite is offered), then run the same command again.",
  });
  leaveStamp("node_modules/.toeline", stamp);
}

function generateFrom(schema) {
  run(
    process.execPath,
    ["node_modules/prisma/build/index.js", "generate", "--schema", schema, "--no-hints"],
    {
      env: withoutEngineDownload,
      onFailure: "The database client could not be generated; the lines above say why.",
    },
  );
}

export function generateClient() {
  const stamp = fingerprint(["prisma/schema.prisma", "lib/cli/schemas.mjs", "package-lock.json"]);
  if (isCurrent("prisma/generated/.toeline", stamp)) return;
  say("Generating the database clients …");
  // The first one clears the folder the second lies in, but not whole, and the second refuses what is left there.
  rmSync(path.join(root, "prisma/generated"), { recursive: true, force: true });
  generateFrom(schemaPath);
  writePostgresSchema();
  generateFrom(postgresSchemaPath);
  leaveStamp("prisma/generated/.toeline", stamp);
}

/** The PostgreSQL that DATABASE_URL names; null: the database is the file in the data folder. */
export function serverUrl() {
  const named = process.env.DATABASE_URL ?? "";
  return engineOfUrl(named) === "postgresql" ? named : null;
}

/** A URL as it may be shown: without its password. */
function shown(url) {
  const parsed = new URL(url);
  if (parsed.password) parsed.password = "…";
  return decodeURI(parsed.href);
}

const restore =
  "bring the last good backup back into an empty folder: TOELINE_DATA=/path/to/empty npm run restore -- BACKUP";

/** Where it is the database itself that cannot be used; null: it is something else. */
function damageSentence(folder, reason) {
  if (/^NEWER: /.test(reason))
    return `The database in ${folder} was written by a newer Toeline than this one, which cannot read it safely. Start the newer one; or, to go back, ${restore}`;
  if (/malformed|not a database|disk image/i.test(reason))
    return `The database in ${folder} is damaged (${reason}). Nothing was changed. Keep the folder as it is, and ${restore}`;
  return null;
}

async function applyTo(folder, url) {
  if (url !== null) return (await import("./schema-engine.mjs")).applyMigrations(url);
  return (await import("./migrate-aside.mjs")).migrateAside(folder);
}

/** Creates the data folder when missing and brings the database to the newest migration. */
export async function migrate(folder = dataFolder(), url = serverUrl()) {
  try {
    mkdirSync(path.join(folder, "photos"), { recursive: true, mode: 0o700 });
    const applied = await applyTo(folder, url);
    if (applied.length > 0) say(`Database brought up to date (${applied.join(", ")}).`);
  } catch (error) {
    const reason = error instanceof Error ? error.message.split("\n")[0] : String(error);
    if (url !== null)
      throw new PrepareError(
        `The PostgreSQL at ${shown(url)} cannot be used (${reason}). Check that it runs, is version 15 or newer, and that DATABASE_URL names a database this user may make tables in.`,
      );
    throw new PrepareError(
      damageSentence(folder, reason) ??
        `The data folder ${folder} cannot be used (${reason}). Check that it can be written to and has free space, or name another one: TOELINE_DATA=/path npm start`,
    );
  }
}

const builtFrom = [
  "app",
  "components",
  "lib",
  "prisma/schema.prisma",
  "next.config.ts",
  "instrumentation.ts",
  "instrumentation-node.ts",
  "proxy.ts",
  "tsconfig.json",
  "package-lock.json",
];

export async function buildApp() {
  const stamp = fingerprint(builtFrom);
  if (isCurrent(".next/toeline", stamp)) return;
  say("Building the pages (about a minute) …");
  run(process.execPath, ["node_modules/next/dist/bin/next", "build"], {
    // What is built is built for any site.
    env: { NEXT_TELEMETRY_DISABLED: "1", NODE_ENV: "production", TOELINE_SITES: "" },
    onFailure: "The pages could not be built; the lines above say why.",
  });
  const { buildWorker } = await import("./build-worker.mjs");
  await buildWorker(root);
  const { buildAside } = await import("./build-aside.mjs");
  await buildAside(root);
  leaveStamp(".next/toeline", stamp);
}

/** Fills an empty database with the demo shop, once: deleting the demo beads does not bring them back. */
export function fillDemo(folder = dataFolder()) {
  run(process.execPath, ["--import", "tsx", "lib/cli/demo.ts"], {
    env: { TOELINE_DATA: folder, NODE_OPTIONS: "--conditions=react-server" },
    onFailure: "The demo shop could not be filled in; the lines above say why.",
  });
}
