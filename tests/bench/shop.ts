import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import Database from "better-sqlite3";
import { fillDemo } from "@/lib/cli/prepare.mjs";
import { layMigrated } from "../setup/migrated";
import { startServer } from "../e2e/support/server";

/** The invented shop, served; and the addresses of the pages that are measured. */
export interface Shop {
  readonly url: string;
  readonly pages: Readonly<Record<"list" | "workbench" | "sheet" | "hand-in", string>>;
  stop(): Promise<void>;
}

export async function shopServer(): Promise<Shop> {
  const folder = mkdtempSync(path.join(tmpdir(), "toeline-bench-"));
  const file = path.join(folder, "toeline.db");
  await layMigrated(file);
  fillDemo(folder);
  const db = new Database(file, { readonly: true });
  const bead = db.prepare(MARKED).get() as { id: string };
  const exercise = db.prepare(`SELECT code FROM "Exercise" ORDER BY id LIMIT 1`).get() as { code: string };
  db.close();
  const server = await startServer(folder);
  return {
    url: server.url,
    pages: {
      list: "/",
      workbench: `/beads/${bead.id}`,
      sheet: `/beads/${bead.id}/sheet`,
      "hand-in": `/hand-in/${exercise.code}`,
    },
    stop: () => server.stop(),
  };
}

/** The bead with most on its photo: the drawing that is longest. */
const MARKED = `SELECT "beadId" AS id FROM "Photo" WHERE role = 'face' ORDER BY length(drawing) DESC, "beadId" LIMIT 1`;
