/** The databases that keep the records. */
export type Engine = "sqlite" | "postgresql";

/** Which database a URL names: "file:…", or "postgresql://…" ("postgres://…" too). Throws on any other. */
export function engineOfUrl(url: string): Engine {
  if (url.startsWith("file:")) return "sqlite";
  if (/^postgres(ql)?:\/\//.test(url)) return "postgresql";
  throw new Error(`no database of ours: ${url.slice(0, 20)}`);
}

/** On globalThis, as the clients are. */
const shared = globalThis as { toelineEngines?: WeakMap<object, Engine> };
const engines = (shared.toelineEngines ??= new WeakMap<object, Engine>());

export function tellEngine(client: object, engine: Engine): void {
  engines.set(client, engine);
}

/** The database behind a client, or behind a transaction of one. What nobody told of is SQLite. */
export const engineOf = (client: object): Engine => engines.get(client) ?? "sqlite";
