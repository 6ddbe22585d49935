import { readFileSync } from "node:fs";
import { createHash } from "node:crypto";
import * as ort from "onnxruntime-web";
import {
  finder,
  reader,
  spots,
  SQUARE,
  STRIP,
  TILE,
  type ReadStrip,
  type ReadTile,
  type ReadWhole,
} from "@/lib/trace";

/** Elsewhere when the study is bundled and taken to another machine. */
export const weightsFile =
  process.env.READER_WEIGHTS ?? new URL(`../../../lib/trace/weights/${reader.file}`, import.meta.url);

export const digestOf = (file: string | URL): string =>
  createHash("sha256").update(readFileSync(file)).digest("hex");

/** The reader in Node, by the same WebAssembly as in the browser; `change` makes other weights of the shipped ones. */
export async function nodeReader(change = (bytes: Uint8Array): Uint8Array => bytes): Promise<ReadStrip> {
  ort.env.wasm.numThreads = 1;
  ort.env.logLevel = "error";
  const session = await ort.InferenceSession.create(change(new Uint8Array(readFileSync(weightsFile))));
  return async (planes) => {
    const strip = new ort.Tensor("float32", planes, [1, 3, STRIP.rows, STRIP.columns]);
    const { toes } = await session.run({ strip });
    return toes!.data as Float32Array;
  };
}

export const finderFile =
  process.env.FINDER_WEIGHTS ?? new URL(`../../../lib/trace/weights/${finder.file}`, import.meta.url);

/** The finder likewise. */
export async function nodeFinder(change = (bytes: Uint8Array): Uint8Array => bytes): Promise<ReadWhole> {
  ort.env.wasm.numThreads = 1;
  ort.env.logLevel = "error";
  const session = await ort.InferenceSession.create(change(new Uint8Array(readFileSync(finderFile))));
  return async (planes) => {
    const photo = new ort.Tensor("float32", planes, [1, 3, SQUARE.side, SQUARE.side]);
    const { bead } = await session.run({ photo });
    return bead!.data as Float32Array;
  };
}

export const spotsFile =
  process.env.SPOTS_WEIGHTS ?? new URL(`../../../lib/trace/weights/${spots.file}`, import.meta.url);

/** The finder of holes and spatter likewise. */
export async function nodeSpots(change = (bytes: Uint8Array): Uint8Array => bytes): Promise<ReadTile> {
  ort.env.wasm.numThreads = 1;
  ort.env.logLevel = "error";
  const session = await ort.InferenceSession.create(change(new Uint8Array(readFileSync(spotsFile))));
  return async (planes) => {
    const tile = new ort.Tensor("float32", planes, [1, 3, TILE.side, TILE.side]);
    const said = await session.run({ tile });
    return said.spots!.data as Float32Array;
  };
}
