/** `npm run load -- --people 50 --minutes 10`: so many people for so many minutes on the built server, and how long they waited. */
import { loadavg } from "node:os";
import { parseArgs } from "node:util";
import { buildApp } from "@/lib/cli/prepare.mjs";
import { startServer } from "../e2e/support/server";
import { load, p95, type Timed } from "./people";

function asked(): readonly [people: number, minutes: number] {
  try {
    const options = { people: { type: "string" }, minutes: { type: "string" } } as const;
    const { values, positionals } = parseArgs({ options, allowPositionals: true });
    return [Number(values.people ?? positionals[0]), Number(values.minutes ?? positionals[1])];
  } catch {
    return [NaN, NaN];
  }
}

const [people, minutes] = asked();
if (!people || !minutes || people > 500 || minutes > 120) {
  console.log("npm run -s load -- --people 50 --minutes 10     up to 500 people, 120 minutes");
  process.exit(process.argv[2] === "--help" ? 0 : 2);
}

function line(name: string, { times, failed }: Timed): string {
  const middle = [...times].sort((a, b) => a - b)[times.length >> 1] ?? 0;
  return `${name.padEnd(18)} ${String(times.length).padStart(6)} done, median ${Math.round(middle)} ms, p95 ${Math.round(p95(times))} ms, ${failed.length} failed${failed[0] ? ` (${failed[0]})` : ""}`;
}

await buildApp();
const before = loadavg()[0]!;
const server = await startServer();
try {
  const { list, save, upload, mostBytes } = await load(server, { people, minutes, thinkMs: 20_000 });
  console.log(`${people} people, ${minutes} minutes, each thinking 20 s between beads`);
  // What else the machine did makes times longer, and is no fault of the server's.
  console.log(`the machine's own load: ${before.toFixed(1)} before, ${loadavg()[0]!.toFixed(1)} at the end`);
  console.log(line("list", list));
  console.log(line("save", save));
  console.log(line("upload of 12 MP", upload));
  console.log(`most memory        ${Math.round(mostBytes / 2 ** 20)} MB`);
  process.exitCode = list.failed.length + save.failed.length + upload.failed.length === 0 ? 0 : 1;
} finally {
  await server.stop();
}
