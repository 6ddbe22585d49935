import { applyMigrations } from "@/lib/cli/schema-engine.mjs";
import { TEMPLATE } from "./postgres-database";
import { startPostgres } from "./postgres-server.mjs";

/** One PostgreSQL for a whole run: started before its first test, gone after its last. */
export async function setup(): Promise<() => Promise<void>> {
  const server = await startPostgres();
  await server.create(TEMPLATE);
  await applyMigrations(server.url(TEMPLATE));
  process.env["TOELINE_TEST_POSTGRES"] = server.url("").replace(/\/$/, "");
  return () => server.stop();
}
