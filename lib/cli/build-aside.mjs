/** Makes one file of what runs beside the thread that serves (lib/aside): `.next/toeline-aside.mjs`, or where somebody says. */
import path from "node:path";

export async function buildAside(
  root,
  { from = "lib/aside/worker.ts", to = path.join(root, ".next/toeline-aside.mjs") } = {},
) {
  const { build } = await import("esbuild");
  await build({
    entryPoints: [path.join(root, from)],
    outfile: to,
    bundle: true,
    platform: "node",
    format: "esm",
    target: "node20",
    // Packages stay where they are: some are native, some read files of their own.
    packages: "external",
    // It throws outside of a server component's build; this is a server.
    alias: { "server-only": path.join(root, "node_modules/server-only/empty.js") },
    tsconfig: path.join(root, "tsconfig.json"),
    define: { "process.env.NODE_ENV": '"production"' },
    logLevel: "error",
  });
  return to;
}
