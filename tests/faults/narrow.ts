/**
 * Writes as the server does under a limit that the shell has set, and says as JSON what came of each thing tried. Argument:
 * the data folder, and what is narrow: "files" (size of a file) or "handles" (open files).
 */
import { closeSync, openSync } from "node:fs";
import path from "node:path";
import { Readable } from "node:stream";
import { addPhoto, attachPhoto, createBead, getBead } from "@/lib/beads";
import { openDb } from "@/lib/db";
import { smallPhoto } from "../setup/small-shop";

const [folder = "", narrow = ""] = process.argv.slice(2);
const db = openDb(`file:${path.join(folder, "toeline.db")}`);
const pen = { db, by: "test" };
const said: Record<string, unknown> = {};
const came = (work: Promise<{ ok: boolean; issues?: readonly { code: string }[] }>) =>
  work.then(
    (result) => (result.ok ? "ok" : (result.issues?.[0]?.code ?? "no code")),
    (error: unknown) => `threw ${error instanceof Error ? error.message.split("\n").at(-1) : String(error)}`,
  );

const upload = async (number: number, beadId: string) =>
  attachPhoto(
    db,
    { dataDir: folder, source: Readable.from([await smallPhoto(number, 640, 480)]), declaredBytes: null },
    (photo) => addPhoto(pen, beadId, photo, "face"),
  );

/** Takes every handle that is left; what gives them back. */
function takeHandles(): () => void {
  const held: number[] = [];
  try {
    for (;;) held.push(openSync("/dev/null", "r"));
  } catch {
    return () => held.forEach((handle) => closeSync(handle));
  }
}

if (narrow === "handles") {
  const made = await createBead(pen, { title: "before" });
  const id = made.ok ? made.value.id : "";
  await upload(1, id);
  const giveBack = takeHandles();
  said["bead"] = await came(createBead(pen, { title: "no handle" }));
  said["photo"] = await came(upload(2, id));
  giveBack();
  said["bead afterwards"] = await came(createBead(pen, { title: "handles again" }));
  said["photo afterwards"] = await came(upload(2, id));
} else {
  const first = await createBead(pen, { title: "first" });
  said["bead"] = await came(Promise.resolve(first));
  const id = first.ok ? first.value.id : "";
  said["photo"] = await came(upload(2, id));
  let refused = "";
  for (let i = 0; i < 400 && refused === ""; i += 1) {
    const came1 = await came(createBead(pen, { title: `bead ${i} ${"x".repeat(60)}` }));
    if (came1 !== "ok") refused = came1;
  }
  said["beads until full"] = refused;
  said["reading"] = (await getBead(db, id)) === null ? "gone" : "ok";
}
await db.$disconnect();
console.log(JSON.stringify(said));
