import { spawn } from "node:child_process";
import { randomInt } from "node:crypto";
import { readdir, readFile } from "node:fs/promises";
import { constants, setPriority } from "node:os";
import path from "node:path";
import { EyeBeadSchema, type EyeBead, type EyeLook } from "@/lib/eye";

/** Beads of each look that are kept: some twelve megabytes in all. When so many are drawn no more are. */
const MOST = 48;
/** Drawn at a time, in the background. */
const AT_A_TIME = 8;

const folderOf = (dataDir: string): string => path.join(dataDir, "eye");
const isId = (id: string): boolean => /^(plain|street)-[a-z0-9]{1,16}$/.test(id);

/** Ids of the drawn beads of a look. */
export async function drawnBeads(dataDir: string, look: EyeLook): Promise<readonly string[]> {
  const names = await readdir(folderOf(dataDir)).catch(() => []);
  return names
    .filter((name) => name.startsWith(`${look}-`) && name.endsWith(".json"))
    .map((name) => name.slice(0, -".json".length))
    .filter(isId)
    .sort();
}

/** What is on these beads; those that are gone or cannot be read are left out. */
export async function readDrawn(dataDir: string, ids: readonly string[]): Promise<readonly EyeBead[]> {
  const found = await Promise.all(
    ids.filter(isId).map(async (id) => {
      const text = await readFile(path.join(folderOf(dataDir), `${id}.json`), "utf8").catch(() => "null");
      const parsed = EyeBeadSchema.safeParse(JSON.parse(text));
      return parsed.success ? [parsed.data] : [];
    }),
  );
  return found.flat();
}

/** The picture of a drawn bead as JPEG; null where there is none. */
export async function drawnPicture(dataDir: string, id: string): Promise<Buffer | null> {
  return isId(id) ? readFile(path.join(folderOf(dataDir), `${id}.jpg`)).catch(() => null) : null;
}

let drawing: EyeLook | null = null;

/**
 * Has more beads drawn in the background where too few are there: one process at a time, behind everything else the machine
 * has to do. Answers whether one is at work.
 */
export async function drawMore(dataDir: string, look: EyeLook): Promise<boolean> {
  if (drawing !== null) return true;
  const there = (await drawnBeads(dataDir, look)).length;
  if (there >= MOST) return false;
  drawing = look;
  const count = Math.min(AT_A_TIME, MOST - there);
  const asked = [folderOf(dataDir), String(count), String(randomInt(2 ** 31)), look];
  const script = path.join("demo-images", "eye", "make-pool.ts");
  const child = spawn(process.execPath, ["--import", "tsx", script, ...asked], {
    cwd: process.cwd(),
    stdio: ["ignore", "ignore", "ignore"],
    env: { ...process.env, NODE_OPTIONS: "" },
  });
  const over = () => {
    drawing = null;
  };
  child.on("error", over);
  child.on("exit", over);
  if (child.pid !== undefined) setPriority(child.pid, constants.priority.PRIORITY_LOW);
  // A server that stops does not wait for pictures.
  child.unref();
  process.once("exit", () => child.kill());
  return true;
}
