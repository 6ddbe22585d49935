/**
 * Prisma's schema engine as WASM, so that migrating needs no binary from outside the package registry.
 * The migrations are ordinary Prisma migrations: `prisma migrate deploy` reads them too where its binary can be had.
 */
import { readFile, readdir } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { engineOfUrl, migrationsOf, schemaPath, schemaText } from "./schemas.mjs";

const root = fileURLToPath(new URL("../..", import.meta.url));
/** The words of full-text search and the tables SQLite keeps them in: Prisma's schema has no word for such a table. */
const wordTables = ["", "_config", "_content", "_data", "_docsize", "_idx"].map((part) => `BeadWords${part}`);
const filtersOf = {
  sqlite: { externalTables: wordTables, externalEnums: [] },
  postgresql: { externalTables: ["public.BeadWords"], externalEnums: [] },
};

/** Types of columns by PostgreSQL's own numbers. */
const [CHARACTER, TEXT] = [18, 25];

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

/** @param {string} url SQLite URL, "file:…" or ":memory:", or one of PostgreSQL */
async function openEngine(url) {
  const bg = await loadEngine();
  const { bindMigrationAwareSqlAdapterFactory } = await import("@prisma/driver-adapter-utils");
  const engineName = engineOfUrl(url);
  const factory = await (engineName === "sqlite" ? sqliteFactory(url) : postgresFactory(url));
  const open = keepConnections(factory);
  const adapter = bindMigrationAwareSqlAdapterFactory(factory);
  const datamodels = [[schemaPath, schemaText(engineName)]];
  const engine = await bg.SchemaEngine.new({ datamodels }, () => undefined, adapter);
  return {
    engine,
    engineName,
    async close() {
      engine.free();
      // The engine leaves its connections open, and an open one keeps the file locked.
      for (const connection of open) await connection.dispose();
    },
  };
}

/**
 * The engine sends the shadow database a whole migration as one statement, which better-sqlite3 refuses to prepare: let it
 * run scripts.
 */
async function sqliteFactory(url) {
  const { PrismaBetterSqlite3 } = await import("@prisma/adapter-better-sqlite3");
  const factory = new PrismaBetterSqlite3({ url });
  const connectToShadowDb = factory.connectToShadowDb.bind(factory);
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
  return factory;
}

/**
 * The adapter takes a script apart at its semicolons, which a trigger's body has too: it is sent whole. Its shadow database
 * would be the very one named in the URL; ours is one beside it, made and taken away again.
 */
async function postgresFactory(url) {
  const { PrismaPg } = await import("@prisma/adapter-pg");
  const { ColumnTypeEnum } = await import("@prisma/driver-adapter-utils");
  const whole = (connection) => {
    const send = (script) => connection.underlyingDriver().query(script);
    connection.executeScript = async (script) => void (await send(script));
    const executeRaw = connection.executeRaw.bind(connection);
    connection.executeRaw = async (query) => {
      if (query.args.length > 0) return executeRaw(query);
      await send(query.sql);
      return 0;
    };
    // The catalogue has single characters, which the adapter does not know: it reads them as texts, and we say what they are.
    const [performIO, queryRaw] = [
      connection.performIO.bind(connection),
      connection.queryRaw.bind(connection),
    ];
    let characters = [];
    connection.performIO = async (query) => {
      const answer = await performIO(query);
      characters = answer.fields.map(({ dataTypeID }) => dataTypeID === CHARACTER);
      for (const field of answer.fields) if (field.dataTypeID === CHARACTER) field.dataTypeID = TEXT;
      return answer;
    };
    connection.queryRaw = async (query) => {
      const answer = await queryRaw(query);
      const columnTypes = answer.columnTypes.map((type, i) =>
        characters[i] ? ColumnTypeEnum.Character : type,
      );
      return { ...answer, columnTypes };
    };
    return connection;
  };
  const factory = new PrismaPg({ connectionString: url, max: 1 });
  const connect = factory.connect.bind(factory);
  factory.connect = async () => whole(await connect());
  factory.connectToShadowDb = async () => {
    const beside = new URL(url);
    const name = `toeline_shadow_${process.pid}_${Date.now()}`;
    const here = await factory.connect();
    await here.executeScript(`CREATE DATABASE "${name}" TEMPLATE template0 ENCODING 'UTF8'`);
    beside.pathname = `/${name}`;
    const shadow = whole(await new PrismaPg({ connectionString: beside.href, max: 1 }).connect());
    const dispose = shadow.dispose.bind(shadow);
    shadow.dispose = async () => {
      await dispose();
      await here.executeScript(`DROP DATABASE "${name}"`);
      await here.dispose();
    };
    return shadow;
  };
  return factory;
}

/** Remembers the connections a factory hands out; the engine closes some of them itself, and once is enough. */
function keepConnections(factory) {
  const open = [];
  for (const way of ["connect", "connectToShadowDb"]) {
    const connect = factory[way].bind(factory);
    factory[way] = async () => {
      const connection = await connect();
      const dispose = connection.dispose.bind(connection);
      let disposed;
      connection.dispose = () => (disposed ??= dispose());
      open.push(connection);
      return connection;
    };
  }
  return open;
}

async function readMigrations(engineName) {
  const folder = migrationsOf(engineName);
  const names = (await readdir(folder, { withFileTypes: true }).catch(() => []))
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort();
  const migrationDirectories = await Promise.all(
    names.map(async (name) => ({
      path: name,
      migrationFile: {
        path: "migration.sql",
        content: { tag: "ok", value: await readFile(path.join(folder, name, "migration.sql"), "utf8") },
      },
    })),
  );
  const lock = await readFile(path.join(folder, "migration_lock.toml"), "utf8").catch(() => null);
  return {
    baseDir: folder,
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
  const { engine, engineName, close } = await openEngine(url);
  try {
    const { appliedMigrationNames } = await engine.applyMigrations({
      migrationsList: await readMigrations(engineName),
      filters: filtersOf[engineName],
    });
    return appliedMigrationNames;
  } finally {
    await close();
  }
}

/**
 * What the schema has that the migrations do not. `url`: a database to ask beside, ":memory:" for SQLite.
 * @returns {Promise<{ drifted: boolean, sql: string }>} the SQL of the migration that is missing
 */
export async function schemaDrift(url = ":memory:") {
  const { engine, engineName, close } = await openEngine(url);
  try {
    const files = [{ path: schemaPath, content: schemaText(engineName) }];
    const to = { tag: "schemaDatamodel", files };
    const from = { tag: "migrations", ...(await readMigrations(engineName)) };
    const filters = filtersOf[engineName];
    const result = await engine.diff({ from, to, script: true, exitCode: true, filters });
    return { drifted: result.exitCode !== 0, sql: result.stdout ?? "" };
  } finally {
    await close();
  }
}
