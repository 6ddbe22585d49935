/** Builds the service worker beside the pages, because it names their files: `.next/toeline-worker.js`. */
import { createHash } from "node:crypto";
import { readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import path from "node:path";

/** Scripts, styles and the fonts of the two most used alphabets; the others come when a page asks for them. */
const isNeeded = (file) => /\.(js|css)$/.test(file) || /-latin(-ext)?-.*\.woff2$/.test(file);

/** Bytes: what is larger (the decoder of HEIC) is fetched by whoever needs it, and not by every first visit. */
const MOST_BYTES = 1_000_000;

function filesIn(folder) {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const inside = path.join(folder, entry.name);
    return entry.isDirectory() ? filesIn(inside) : [inside];
  });
}

export async function buildWorker(root) {
  const { build } = await import("esbuild");
  const next = path.join(root, ".next");
  const files = filesIn(path.join(next, "static"))
    .filter((file) => statSync(file).size <= MOST_BYTES)
    .map((file) => path.relative(next, file).split(path.sep).join("/"))
    .filter(isNeeded)
    .sort();
  // Their names change with their content, so the addresses are revision enough.
  const entries = files.map((file) => ({ url: `/_next/${file}`, revision: null }));
  const buildId = readFileSync(path.join(next, "BUILD_ID"), "utf8").trim();
  const { outputFiles } = await build({
    entryPoints: [path.join(root, "components/offline/worker/worker.ts")],
    bundle: true,
    minify: true,
    write: false,
    format: "iife",
    target: "es2022",
    logLevel: "error",
    define: {
      BUILD: JSON.stringify(createHash("sha256").update(buildId).digest("hex").slice(0, 12)),
      STATIC_FILES: JSON.stringify(entries),
      "process.env.NODE_ENV": '"production"',
    },
  });
  writeFileSync(path.join(next, "toeline-worker.js"), outputFiles[0].contents);
}
