import { copyFileSync, existsSync, mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { openDb } from "@/lib/db";
import { startServer, type TestServer } from "../e2e/support/server";
import { serveFrom } from "../setup/fresh-db";
import { newPostgresDatabase } from "../setup/postgres-database";
import { setup as startPostgres } from "../setup/postgres-global";
import { s3Keys, startS3Stub } from "../setup/s3-stub";
import { weldersIn } from "./people";
import { startProxy, type Proxy } from "./proxy";

/** Several servers as a school has them: one database, one place of photos, the same keys in each folder. */
export interface Servers {
  readonly servers: readonly TestServer[];
  /** What stands in front of them. */
  readonly proxy: Proxy;
  /** A token for each of those who work there. */
  readonly tokens: readonly string[];
  readonly database: string;
  readonly photos: string;
  /** Where the bucket is; `tellS3` tells this process. */
  readonly endpoint: string;
  /** What lies in it, by path. */
  readonly objects: Map<string, Buffer>;
  stop(): Promise<void>;
}

const KEYS = ["installation-key", "session-key"];

/** A data folder with the same keys as another; null: with none yet. */
function folderLike(first: string | null): string {
  const folder = mkdtempSync(path.join(tmpdir(), "toeline-server-"));
  for (const key of KEYS)
    if (first !== null && existsSync(path.join(first, key)))
      copyFileSync(path.join(first, key), path.join(folder, key));
  return folder;
}

/** So many built servers on one real PostgreSQL and one bucket (the stand-in), with so many welders, behind one proxy. */
export async function startServers(count: number, people: number): Promise<Servers> {
  const running: (() => Promise<unknown>)[] = [];
  const stop = async (): Promise<void> => {
    for (const one of running.toReversed()) await one();
  };
  try {
    running.push(await startPostgres());
    const database = await newPostgresDatabase();
    delete process.env["TOELINE_TEST_POSTGRES"];
    const stub = await startS3Stub();
    running.push(() => stub.close());
    const photos = "s3://works/photos";
    const env = {
      DATABASE_URL: database,
      TOELINE_PHOTOS: photos,
      TOELINE_S3_ENDPOINT: stub.endpoint,
      AWS_ACCESS_KEY_ID: s3Keys.accessKeyId,
      AWS_SECRET_ACCESS_KEY: s3Keys.secretAccessKey,
    };
    const servers: TestServer[] = [];
    for (let i = 0; i < count; i += 1) {
      const server = await startServer(folderLike(servers[0]?.dataFolder ?? null), { accounts: true, env });
      servers.push(server);
      running.push(() => server.stop());
      // The first page makes the keys, which the next server is given.
      await (await fetch(`${server.url}/`)).text();
    }
    const proxy = await startProxy(servers.map(({ url }) => url));
    running.push(() => proxy.close());
    // Tokens are made with the keys of the servers.
    serveFrom(servers[0]?.dataFolder ?? "");
    const db = openDb(database, servers[0]?.dataFolder);
    const tokens = await weldersIn(db, people).finally(() => db.$disconnect());
    return { servers, proxy, tokens, database, photos, endpoint: stub.endpoint, objects: stub.objects, stop };
  } catch (error) {
    await stop();
    throw error;
  }
}
