import { mkdtemp, readdir, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { receivePhoto, type ReceivedPhoto } from "@/lib/photo";
import { type ReceiveOptions } from "@/lib/photo/receive-photo";

/** A data folder for one test. */
export async function withStore(work: (dataDir: string) => Promise<void>): Promise<void> {
  const dataDir = await mkdtemp(path.join(tmpdir(), "toeline-photo-"));
  try {
    await work(dataDir);
  } finally {
    await rm(dataDir, { recursive: true, force: true });
  }
}

export async function* inChunks(bytes: Uint8Array, size = 65536): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size);
}

export function send(dataDir: string, bytes: Uint8Array, options: Partial<ReceiveOptions> = {}) {
  return receivePhoto(dataDir, inChunks(bytes), { declaredBytes: bytes.length, ...options });
}

/** The stored photo; fails with the issues when it was refused. */
export async function stored(dataDir: string, bytes: Uint8Array): Promise<ReceivedPhoto> {
  const answer = await send(dataDir, bytes);
  if (!answer.ok) throw new Error(`refused: ${JSON.stringify(answer.issues)}`);
  return answer.value;
}

/** The one code a photo was refused with, or "stored". */
export async function fate(bytes: Uint8Array, options: Partial<ReceiveOptions> = {}): Promise<string> {
  let code = "nothing";
  await withStore(async (dataDir) => {
    const answer = await send(dataDir, bytes, options);
    code = answer.ok ? "stored" : answer.issues.map((issue) => issue.code).join();
    if (!answer.ok && (await allFiles(dataDir)).length > 0)
      throw new Error("a refused photo left files behind");
  });
  return code;
}

/** Every file below a folder, relative. */
export async function allFiles(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => path.relative(folder, path.join(entry.parentPath, entry.name)))
    .sort();
}
