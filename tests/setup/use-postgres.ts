import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll } from "vitest";
import { openDb, type Db } from "@/lib/db";
import { newPostgresDatabase, postgresToTest } from "./postgres-database";
import { setup } from "./postgres-global";

export interface Postgres {
  /** URL of a database of its own with every migration. */
  newDatabase(): Promise<string>;
  /** A client, closed when the file ends. `folder`: its data folder; left out, an empty one of its own. */
  open(url: string, folder?: string): Db;
  newFolder(): string;
}

/** Call at the top of a test file that is about PostgreSQL whatever the run is on: a server is started where there is none. */
export function usePostgres(): () => Postgres {
  const [clients, folders]: [Db[], string[]] = [[], []];
  let stop: (() => Promise<void>) | null = null;
  let server = postgresToTest();
  beforeAll(async () => {
    if (server !== "") return;
    stop = await setup();
    server = postgresToTest();
    delete process.env["TOELINE_TEST_POSTGRES"];
  });
  afterAll(async () => {
    for (const client of clients) await client.$disconnect();
    for (const folder of folders) rmSync(folder, { recursive: true, force: true });
    await stop?.();
  });
  const newFolder = (): string => {
    const folder = mkdtempSync(path.join(tmpdir(), "toeline-db-"));
    folders.push(folder);
    return folder;
  };
  return () => ({
    newDatabase: () => newPostgresDatabase(server),
    open(url, folder = newFolder()) {
      const client = openDb(url, folder);
      clients.push(client);
      return client;
    },
    newFolder,
  });
}
