import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";

const here = (file: string): string => fileURLToPath(new URL(file, import.meta.url));

/** What one rule of the house says of each piece of code, in the order of the pieces. */
export function lintCode(rule: string, codes: readonly string[], options?: object): readonly string[][] {
  const folder = mkdtempSync(path.join(tmpdir(), "toeline-lint-"));
  try {
    const config = path.join(folder, "lint.json");
    const jsPlugins = [{ name: "house", specifier: here("./house-rules.mjs") }];
    const rules = { [`house/${rule}`]: options ? ["error", options] : "error" };
    writeFileSync(
      config,
      JSON.stringify({ plugins: [], jsPlugins, categories: { correctness: "off" }, rules }),
    );
    codes.forEach((code, i) => writeFileSync(path.join(folder, `${i}.tsx`), code));
    const oxlint = here("../../node_modules/oxlint/bin/oxlint");
    const { stdout } = spawnSync(process.execPath, [oxlint, "-c", config, "-f", "json", folder], {
      encoding: "utf8",
    });
    const found = JSON.parse(stdout) as { diagnostics: { message: string; filename: string }[] };
    return codes.map((_, i) =>
      found.diagnostics
        .filter(({ filename }) => path.basename(filename) === `${i}.tsx`)
        .map(({ message }) => message),
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
