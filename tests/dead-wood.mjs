/**
 * Names, files and packages that nobody uses (knip), twice: with the tests, and without them, because what tests alone
 * keep alive is dead too. What a screen is still to use says @awaited, and is counted. Run by itself it prints what it
 * found and fails on any.
 */
import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";

const here = fileURLToPath(new URL("..", import.meta.url));
const config = "tests/setup/knip.jsonc";

/** Each finding as "kind: name in file", under `root`; null where that copy of the house has no configuration. */
export async function deadWood(root = here) {
  if (!existsSync(path.join(root, config))) return null;
  const found = await Promise.all([knip(root), knip(root, "--production")]);
  return [...new Set(found.flat())].sort();
}

function knip(root, ...more) {
  const bin = path.join(here, "node_modules/knip/bin/knip.js");
  const args = [bin, "-c", config, "--reporter", "json", "--no-progress", "--no-config-hints", ...more];
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, args, { cwd: root });
    const said = { out: "", err: "" };
    child.stdout.on("data", (data) => (said.out += data));
    child.stderr.on("data", (data) => (said.err += data));
    child.on("close", (status) => {
      // 0: nothing found, 1: something; anything else is knip's own trouble.
      if (status !== 0 && status !== 1) reject(new Error(said.err || `knip ended with ${status}`));
      else resolve(findings(JSON.parse(said.out)));
    });
  });
}

function findings({ issues }) {
  return issues.flatMap(({ file, ...kinds }) =>
    Object.entries(kinds).flatMap(([kind, list]) =>
      (Array.isArray(list) ? list : []).map((one) => `${kind}: ${one.name ?? one} in ${file}`),
    ),
  );
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const found = await deadWood();
  for (const one of found) console.log(one);
  console.log(`${found.length} names, files or packages that nobody uses`);
  process.exit(found.length === 0 ? 0 : 1);
}
