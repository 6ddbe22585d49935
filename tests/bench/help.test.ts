import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";

it("npm run bench has everything that it measures with, and says which parts there are", () => {
  const root = fileURLToPath(new URL("../..", import.meta.url));
  const said = execFileSync("npm", ["run", "-s", "bench", "--", "--help"], { cwd: root, encoding: "utf8" });
  for (const part of ["hand", "answer", "upload", "scripts", "lighthouse", "lists"])
    expect(said).toContain(`[${part}]`);
});
