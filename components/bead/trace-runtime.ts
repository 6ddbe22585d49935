import * as ort from "onnxruntime-web/wasm";
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

/** The address everything is fetched from: this installation's own. */
const FROM = "/reader/";

interface Weights {
  readonly file: string;
  readonly sha256: string;
}

/** The weights, if they are the ones this version was tried with. */
async function fetched({ file, sha256 }: Weights): Promise<Uint8Array> {
  const answer = await fetch(`${FROM}${file}?${sha256.slice(0, 16)}`);
  if (!answer.ok) throw new Error("the reader could not be loaded");
  const bytes = new Uint8Array(await answer.arrayBuffer());
  // A page from another machine over plain http has no digests; the address is the installation's own there too.
  const subtle = (globalThis.crypto as Crypto | undefined)?.subtle;
  if (subtle !== undefined) {
    const digest = new Uint8Array(await subtle.digest("SHA-256", bytes));
    const hex = Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
    if (hex !== sha256) throw new Error("the reader's weights are not the ones of this version");
  }
  return bytes;
}

const sessions = new Map<string, Promise<ort.InferenceSession>>();

/** One session of each for the worker's life; one that failed is tried again. */
function sessionOf(weights: Weights): Promise<ort.InferenceSession> {
  ort.env.wasm.numThreads = 1;
  ort.env.wasm.wasmPaths = FROM;
  const known = sessions.get(weights.file);
  if (known !== undefined) return known;
  const made = fetched(weights).then((bytes) => ort.InferenceSession.create(bytes));
  made.catch(() => sessions.delete(weights.file));
  sessions.set(weights.file, made);
  return made;
}

export const runReader: ReadStrip = async (planes) => {
  const strip = new ort.Tensor("float32", planes, [1, 3, STRIP.rows, STRIP.columns]);
  const { toes } = await (await sessionOf(reader)).run({ strip });
  return toes!.data as Float32Array;
};

export const runFinder: ReadWhole = async (planes) => {
  const photo = new ort.Tensor("float32", planes, [1, 3, SQUARE.side, SQUARE.side]);
  const { bead } = await (await sessionOf(finder)).run({ photo });
  return bead!.data as Float32Array;
};

export const runSpots: ReadTile = async (planes) => {
  const tile = new ort.Tensor("float32", planes, [1, 3, TILE.side, TILE.side]);
  const said = await (await sessionOf(spots)).run({ tile });
  return said.spots!.data as Float32Array;
};
