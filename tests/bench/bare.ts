/** Two bare pages, built and served by the same Next: one with nothing on it, one with a photo on a Konva stage. */
import { spawn } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { PATIENT_MS } from "../setup/patience";

const root = fileURLToPath(new URL("../..", import.meta.url));
const NEXT = path.join(root, "node_modules/next/dist/bin/next");
/** Outside of this house, whose own instrumentation Next would take along; its packages are linked, so each clone has its own. */
const clone = createHash("sha256").update(root).digest("hex").slice(0, 12);
const BARE = path.join(tmpdir(), `toeline-bare-pages-${clone}`);
const BARE_PORT = 19_800 + (process.pid % 100);

const bareFiles: Readonly<Record<string, string>> = {
  "package.json": `{ "name": "bare", "private": true, "type": "module" }`,
  "next.config.mjs": `export default { turbopack: { root: "/" }, outputFileTracingRoot: "/" };`,
  "app/layout.jsx": `export default ({ children }) => <html lang="en"><body>{children}</body></html>;`,
  "app/page.jsx": `export default () => <main data-stands="">Nothing</main>;`,
  "app/stage/page.jsx": `"use client";
import dynamic from "next/dynamic";
const Bare = dynamic(() => import("./bare"), { ssr: false });
export default function Page() { return <Bare />; }`,
  "app/stage/bare.jsx": `"use client";
import { Circle, Image, Layer, Stage } from "react-konva";
export default function Bare() {
  return (
    <div data-stands="">
      <p>A stage</p>
      <Stage width={600} height={400} draggable><Layer><Image width={600} height={400} /><Circle radius={9} draggable /></Layer></Stage>
    </div>
  );
}`,
};

/** Builds the two bare pages, once for each version of what they are made of. */
async function buildBare(): Promise<void> {
  const stamp = JSON.stringify([bareFiles, versions()]);
  const stampFile = path.join(BARE, ".next/built-from");
  if (existsSync(stampFile) && readFileSync(stampFile, "utf8") === stamp) return;
  rmSync(BARE, { recursive: true, force: true });
  for (const [name, text] of Object.entries(bareFiles)) {
    mkdirSync(path.dirname(path.join(BARE, name)), { recursive: true });
    writeFileSync(path.join(BARE, name), text);
  }
  symlinkSync(path.join(root, "node_modules"), path.join(BARE, "node_modules"));
  const child = spawn(process.execPath, [NEXT, "build"], {
    cwd: BARE,
    stdio: ["ignore", "ignore", "inherit"],
    env: { ...process.env, NODE_ENV: "production", NEXT_TELEMETRY_DISABLED: "1" },
  });
  const code = await new Promise((resolve) => child.once("exit", resolve));
  if (code !== 0) throw new Error(`the bare pages were not built (${String(code)})`);
  writeFileSync(stampFile, stamp);
}

const versions = (): readonly string[] =>
  ["next", "react", "react-dom", "konva", "react-konva"].map((name) => {
    const file = path.join(root, "node_modules", name, "package.json");
    return (JSON.parse(readFileSync(file, "utf8")) as { version: string }).version;
  });

export const bareNames = { empty: "bare Next page", stage: "bare Next page with react-konva" } as const;

/** Serves them while `work` is done, the one with nothing on it at `url`, the stage at `url`/stage. */
export async function withBare<T>(work: (url: string) => Promise<T>): Promise<T> {
  await buildBare();
  const child = spawn(process.execPath, [NEXT, "start", "-H", "127.0.0.1", "-p", String(BARE_PORT)], {
    cwd: BARE,
    stdio: ["ignore", "ignore", "inherit"],
    env: { ...process.env, NODE_ENV: "production" },
  });
  const url = `http://127.0.0.1:${BARE_PORT}`;
  try {
    const until = Date.now() + PATIENT_MS;
    while (!(await fetch(url).catch(() => null))?.ok) {
      if (Date.now() > until || child.exitCode !== null) throw new Error("the bare pages are not served");
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
    return await work(url);
  } finally {
    child.kill("SIGTERM");
  }
}
