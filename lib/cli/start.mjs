/**
 * `npm start`: sets up whatever is missing, then serves on this machine only. `npm run dev`: the same with Next's
 * development server for people who carry on the work.
 */
import { spawn } from "node:child_process";
import { createServer } from "node:net";
import {
  buildApp,
  checkNode,
  dataFolder,
  fillDemo,
  generateClient,
  installPackages,
  migrate,
  PrepareError,
  root,
} from "./prepare.mjs";

const HOST = "127.0.0.1";
const WANTED_PORT = Number(process.env.PORT) || 3000;
const dev = process.argv.includes("--dev");

function isFree(port) {
  return new Promise((resolve) => {
    const probe = createServer();
    probe.once("error", () => resolve(false));
    probe.listen(port, HOST, () => probe.close(() => resolve(true)));
  });
}

async function freePort() {
  for (let port = WANTED_PORT; port < WANTED_PORT + 50; port += 1) {
    if (await isFree(port)) return port;
  }
  throw new PrepareError(
    `Ports ${WANTED_PORT} to ${WANTED_PORT + 49} are all taken. Free one, or choose: PORT=8080 npm start`,
  );
}

async function untilServing(port, child) {
  while (child.exitCode === null) {
    const answer = await fetch(`http://${HOST}:${port}/api/health`).catch(() => null);
    if (answer?.ok) return true;
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
  return false;
}

function serve(port) {
  const mode = dev ? ["dev"] : ["start"];
  const child = spawn(
    process.execPath,
    ["node_modules/next/dist/bin/next", ...mode, "-H", HOST, "-p", String(port)],
    {
      cwd: root,
      stdio: ["ignore", dev ? "inherit" : "ignore", "inherit"],
      env: { ...process.env, TOELINE_DATA: dataFolder(), NEXT_TELEMETRY_DISABLED: "1" },
    },
  );
  let stopping = false;
  const stop = () => {
    if (stopping) return;
    stopping = true;
    console.log("\n  Stopping …");
    child.kill("SIGTERM");
    setTimeout(() => child.kill("SIGKILL"), 5000).unref();
  };
  process.on("SIGINT", stop);
  process.on("SIGTERM", stop);
  child.on("exit", (code) => {
    if (stopping) console.log("  Stopped. Everything saved is in " + dataFolder());
    process.exit(stopping ? 0 : (code ?? 1));
  });
  return child;
}

try {
  console.log("Toeline");
  checkNode();
  installPackages();
  generateClient();
  await migrate();
  if (!dev) buildApp();
  fillDemo();
  const port = await freePort();
  if (port !== WANTED_PORT) console.log(`  Port ${WANTED_PORT} is taken; using ${port} instead.`);
  const child = serve(port);
  if (await untilServing(port, child)) {
    console.log(`  Data folder  ${dataFolder()}`);
    console.log(`  Open         http://${HOST}:${port}`);
    console.log("  Stop         Ctrl-C");
  }
} catch (error) {
  if (!(error instanceof PrepareError)) throw error;
  console.error(`\n  ${error.message}`);
  process.exit(1);
}
