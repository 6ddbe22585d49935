import { describe, expect, it } from "vitest";
import { applyMigrations, schemaDrift } from "@/lib/cli/schema-engine.mjs";
import { useFreshDb } from "../setup/fresh-db";

const fresh = useFreshDb();

describe("the migrations", () => {
  it("make exactly what prisma/schema.prisma says", async () => {
    const { drifted, sql } = await schemaDrift();
    expect(drifted, sql).toBe(false);
  });

  it("are applied once: a second run applies nothing", async () => {
    const { url, db } = fresh();
    expect(await applyMigrations(url)).toEqual([]);
    const rows = await db.$queryRaw<
      { migration_name: string; checksum: string }[]
    >`SELECT migration_name, checksum FROM _prisma_migrations`;
    expect(rows.length).toBeGreaterThan(0);
    // An ordinary Prisma migration table: a 64-digit SHA-256 per migration, so `prisma migrate deploy` reads it too.
    for (const row of rows) expect(row.checksum).toMatch(/^[0-9a-f]{64}$/);
  });
});
