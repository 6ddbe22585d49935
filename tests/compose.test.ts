import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import packageFile from "../package.json";

const root = path.join(import.meta.dirname, "..");
const readMe = readFileSync(path.join(root, "README.md"), "utf8");

interface Service {
  readonly image: string;
  readonly command?: string;
  readonly working_dir?: string;
  readonly environment: Readonly<Record<string, string>>;
  readonly volumes: readonly string[];
  readonly ports?: readonly string[];
  readonly depends_on?: Readonly<Record<string, { readonly condition: string }>>;
  readonly healthcheck?: { readonly test: readonly string[] };
}
interface Compose {
  readonly services: Readonly<Record<string, Service>>;
  readonly volumes: Readonly<Record<string, object>>;
}

/** The compose file of README, read as any engine reads it. */
const [, text = ""] = /```yaml\n([\s\S]*?)```/.exec(readMe) ?? [];
const { services, volumes } = parse(text, { strict: true, uniqueKeys: true }) as Compose;
const { db, toeline } = services;

/** Every variable that the program reads of its environment, wherever it does. */
function variablesRead(): ReadonlySet<string> {
  const places = ["lib", "app", "components"].flatMap((folder) =>
    readdirSync(path.join(root, folder), { recursive: true, encoding: "utf8" }).map(
      (file) => `${folder}/${file}`,
    ),
  );
  const files = [...places, "instrumentation-node.ts", "next.config.ts", "proxy.ts"];
  const found = new Set<string>();
  for (const file of files.filter((one) => /\.(?:ts|tsx|mjs)$/.test(one)))
    for (const [, name = ""] of readFileSync(path.join(root, file), "utf8").matchAll(
      /\benv(?:\.|\[")([A-Z][A-Z0-9_]+)\b/g,
    ))
      found.add(name);
  return found;
}

/** Read by Node itself: where this machine is, by whose clock a paper is dated. */
const OF_NODE = new Set(["TZ"]);
const read = variablesRead();
const unread = (names: readonly string[]): readonly string[] =>
  names.filter((name) => !read.has(name) && !OF_NODE.has(name));

describe("the compose file of README", () => {
  it("sets no variable that the program does not read", () => {
    expect(Object.keys(toeline!.environment).length).toBeGreaterThan(3);
    expect(unread(Object.keys(toeline!.environment))).toEqual([]);
    expect(unread(["TOELINE_DATABASE"])).toEqual(["TOELINE_DATABASE"]);
    for (const value of Object.values(toeline!.environment)) expect(value).toBeTypeOf("string");
  });

  it("names a database that the other service makes, new enough, and waits until it answers", () => {
    const { POSTGRES_USER, POSTGRES_PASSWORD, POSTGRES_DB, ...more } = db!.environment;
    expect(more).toEqual({});
    const url = new URL(toeline!.environment["DATABASE_URL"]!);
    expect([url.protocol, url.username, url.password, url.hostname, url.pathname]).toEqual([
      "postgresql:",
      POSTGRES_USER,
      POSTGRES_PASSWORD,
      Object.keys(services).find((name) => services[name] === db),
      `/${POSTGRES_DB}`,
    ]);
    expect(Number(/^postgres:(\d+)$/.exec(db!.image)?.[1])).toBeGreaterThanOrEqual(15);
    expect(toeline!.depends_on).toEqual({ [url.hostname]: { condition: "service_healthy" } });
    expect(db!.healthcheck?.test.join(" ")).toContain(`pg_isready -U ${POSTGRES_USER}`);
  });

  it("keeps what has to be kept on volumes that are declared", () => {
    const mounts = Object.values(services).flatMap((one) => one.volumes.map((mount) => mount.split(":")));
    const named = mounts.map(([from = ""]) => from).filter((from) => !from.startsWith("."));
    expect(named.toSorted()).toEqual(Object.keys(volumes).toSorted());
    const into = toeline!.volumes.map((mount) => mount.split(":")[1]);
    expect(into).toContain(toeline!.environment["TOELINE_DATA"]);
    expect(into).toContain(toeline!.working_dir);
  });

  it("starts it as package.json does, on a Node it runs on, at the port it listens on", () => {
    const script = toeline!.command?.replace(/^npm (?:run )?/, "") ?? "";
    expect(Object.keys(packageFile.scripts)).toContain(script);
    const oldest = Number(/>=(\d+)/.exec(packageFile.engines.node)?.[1]);
    expect(Number(/^node:(\d+)$/.exec(toeline!.image)?.[1])).toBeGreaterThanOrEqual(oldest);
    const start = readFileSync(path.join(root, "lib/cli/start.mjs"), "utf8");
    const port = /process\.env\.PORT\) \|\| (\d+)/.exec(start)?.[1];
    expect(toeline!.ports?.map((one) => one.split(":")[1])).toEqual([port]);
    // From outside its container nobody reaches what listens on the container alone.
    expect(toeline!.environment["TOELINE_HOST"]).toBe("0.0.0.0");
  });
});

it("README sets no variable that the program does not read", () => {
  const names = [...readMe.matchAll(/(?<![\w{])((?:TOELINE|AWS|DATABASE|POSTGRES)_[A-Z0-9_]+)(?==)/g)].map(
    ([, name = ""]) => name,
  );
  expect(new Set(names).size).toBeGreaterThan(8);
  expect(unread(names)).toEqual([]);
});
