/**
 * Prisma's schema engine as WASM, so that migrating needs no binary from outside the package registry.
 * The migrations are ordinary Prisma migrations: `prisma migrate deploy` reads them too where its binary can be had.
 */
import { readFile, readdir } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

const root = fileURLToPath(new URL("../..", import.meta.url));
const schemaPath = path.join(root, "prisma/schema.prisma");
const migrationsDir = path.join(root, "prisma/migrations");
/** The words of full-text search and the tables SQLite keeps them in: Prisma's schema has no word for such a table. */
const wordTables = ["", "_config", "_content", "_data", "_docsize", "_idx"].map((part) => `BeadWords${part}`);
const filters = { externalTables: wordTables, externalEnums: [] };

let loading;
/** The WASM module keeps views of its one memory, so it is instantiated once per process. */
function loadEngine() {
  loading ??= instantiate();
  return loading;
}

async function instantiate() {
  // The package exports neither file by name, so both are read where they lie.
  const folder = path.join(root, "node_modules/@prisma/schema-engine-wasm");
  const bg = await import(pathToFileURL(path.join(folder, "schema_engine_bg.js")).href);
  const wasm = await readFile(path.join(folder, "schema_engine_bg.wasm"));
  const { instance } = await WebAssembly.instantiate(wasm, { "./schema_engine_bg.js": bg });
  bg.__wbg_set_wasm(instance.exports);
  globalThis.PRISMA_WASM_PANIC_REGISTRY = {
    set_message(message) {
      throw new Error(`Prisma's schema engine stopped: ${message}`);
    },
  };
  instance.exports.__wbindgen_start();
  return bg;
}

/** @param {string} url SQLite URL, "file:…" or ":memory:" */
async function openEngine(url) {
  const bg = await loadEngine();
  const { bindMigrationAwareSqlAdapterFactory } = await import("@prisma/driver-adapter-utils");
  const { PrismaBetterSqlite3 } = await import("@prisma/adapter-better-sqlite3");
  const schema = await readFile(schemaPath, "utf8");
  const factory = new PrismaBetterSqlite3({ url });
  const open = keepConnections(factory);
  const adapter = bindMigrationAwareSqlAdapterFactory(factory);
  const engine = await bg.SchemaEngine.new({ datamodels: [[schemaPath, schema]] }, () => undefined, adapter);
  return {
    engine,
    async close() {
      engine.free();
      // The engine leaves its connections open, and an open one keeps the file locked.
      for (const connection of open) await connection.dispose();
    },
  };
}

/**
 * Remembers the connections a factory hands out, and lets the shadow one run scripts: the engine sends it a whole
 * migration as one statement, which better-sqlite3 refuses to prepare.
 */
function keepConnections(factory) {
  const open = [];
  const connect = factory.connect.bind(factory);
  const connectToShadowDb = factory.connectToShadowDb.bind(factory);
  factory.connect = async () => {
    const connection = await connect();
    open.push(connection);
    return connection;
  };
  factory.connectToShadowDb = async () => {
    const connection = await connectToShadowDb();
    const executeRaw = connection.executeRaw.bind(connection);
    connection.executeRaw = async (query) => {
      if (query.args.length > 0) return executeRaw(query);
      await connection.executeScript(query.sql);
      return 0;
    };
    return connection;
  };
  return open;
}

async function readMigrations() {
  const names = (await readdir(migrationsDir, { withFileTypes: true }))
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort();
  const migrationDirectories = await Promise.all(
    names.map(async (name) => ({
      path: name,
      migrationFile: {
        path: "migration.sql",
        content: {
          tag: "ok",
          value: await readFile(path.join(migrationsDir, name, "migration.sql"), "utf8"),
        },
      },
    })),
  );
  const lock = await readFile(path.join(migrationsDir, "migration_lock.toml"), "utf8").catch(() => null);
  return {
    baseDir: migrationsDir,
    lockfile: { path: "migration_lock.toml", content: lock },
    shadowDbInitScript: "",
    migrationDirectories,
  };
}

/**
 * Applies every migration the database does not have yet.
 * @param {string} url
 * @returns {Promise<string[]>} names of the migrations applied now; empty when it was up to date
 */
export async function applyMigrations(url) {
  const { engine, close } = await openEngine(url);
  try {
    const { appliedMigrationNames } = await engine.applyMigrations({
      migrationsList: await readMigrations(),
      filters,
    });
    return appliedMigrationNames;
  } finally {
    await close();
  }
}

/**
 * What the schema has that the migrations do not.
 * @returns {Promise<{ drifted: boolean, sql: string }>} the SQL of the migration that is missing
 */
export async function schemaDrift() {
  const { engine, close } = await openEngine(":memory:");
  try {
    const files = [{ path: schemaPath, content: await readFile(schemaPath, "utf8") }];
    const to = { tag: "schemaDatamodel", files };
    const from = { tag: "migrations", ...(await readMigrations()) };
    const result = await engine.diff({ from, to, script: true, exitCode: true, filters });
    return { drifted: result.exitCode !== 0, sql: result.stdout ?? "" };
  } finally {
    await close();
  }
}
