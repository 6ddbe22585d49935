import { copyFileSync, existsSync, mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { startServer, type TestServer } from "../e2e/support/server";
import { newPostgresDatabase } from "../setup/postgres-database";
import { setup as startPostgres } from "../setup/postgres-global";
import { s3Keys, startS3Stub } from "../setup/s3-stub";

/** Several servers as a school has them: one database, one place of photos, the same keys in each folder. */
export interface Servers {
  readonly servers: readonly TestServer[];
  readonly database: string;
  readonly photos: string;
  /** Where the bucket is; `tellS3` tells this process. */
  readonly endpoint: string;
  stop(): Promise<void>;
}

const KEYS = ["installation-key", "session-key"];

/** So many built servers on one real PostgreSQL and one bucket (the stand-in). */
export async function startServers(count: number): Promise<Servers> {
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
      const folder = mkdtempSync(path.join(tmpdir(), "toeline-server-"));
      const first = servers[0]?.dataFolder;
      for (const key of KEYS)
        if (first !== undefined && existsSync(path.join(first, key)))
          copyFileSync(path.join(first, key), path.join(folder, key));
      const server = await startServer(folder, { env });
      servers.push(server);
      running.push(() => server.stop());
      // The first page makes the keys, which the next server is given.
      await (await fetch(`${server.url}/`)).text();
    }
    return { servers, database, photos, endpoint: stub.endpoint, stop };
  } catch (error) {
    await stop();
    throw error;
  }
}
