/**
 * The contract of photo stores against a real S3 server, Ceph's gateway out of Debian's packages; part of the long run. Where
 * it is not installed nothing is proved, and that is said.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("../..", import.meta.url));
const script = path.join(root, "tests/setup/ceph-gateway.sh");
const folder = path.join(mkdtempSync(path.join(tmpdir(), "toeline-ceph-")), "store");

if (spawnSync("radosgw", ["--version"]).error) {
  console.log(
    "No radosgw here: not tried on a real S3 server. tests/setup/ceph-gateway.sh says what to install.",
  );
  process.exit(0);
}
const started = spawnSync(script, ["start", folder], {
  encoding: "utf8",
  stdio: ["ignore", "pipe", "inherit"],
});
try {
  if (started.status !== 0) throw new Error("the gateway did not start");
  const args = [
    "run",
    "-c",
    "tests/vitest.config.ts",
    ...process.argv.slice(2),
    "tests/lib/photo/photo-store",
  ];
  const env = { ...process.env, TOELINE_TEST_S3: started.stdout.trim() };
  const { status } = spawnSync(
    process.execPath,
    [path.join(root, "node_modules/vitest/vitest.mjs"), ...args],
    {
      ...{ cwd: root, env, stdio: "inherit" },
    },
  );
  process.exitCode = status ?? 1;
} finally {
  spawnSync(script, ["stop", folder], { stdio: "inherit" });
}
