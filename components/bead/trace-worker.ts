import * as ort from "onnxruntime-web/wasm";
import type { Point } from "@/lib/geometry";
import { reader, STRIP, traceBead, type Pixels, type ReadStrip } from "@/lib/trace";

/** The address everything is fetched from: this installation's own. */
const FROM = "/reader/";

interface Asked {
  readonly image: Pixels;
  readonly line: readonly Point<"photo">[];
}

/** The weights, if they are the ones this version was tried with. */
async function weights(): Promise<Uint8Array> {
  const answer = await fetch(`${FROM}${reader.file}?${reader.sha256.slice(0, 16)}`);
  if (!answer.ok) throw new Error("the reader could not be loaded");
  const bytes = new Uint8Array(await answer.arrayBuffer());
  // A page from another machine over plain http has no digests; the address is the installation's own there too.
  const subtle = (globalThis.crypto as Crypto | undefined)?.subtle;
  if (subtle !== undefined) {
    const digest = new Uint8Array(await subtle.digest("SHA-256", bytes));
    const hex = Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
    if (hex !== reader.sha256) throw new Error("the reader's weights are not the ones of this version");
  }
  return bytes;
}

let session: Promise<ort.InferenceSession> | null = null;

async function load(): Promise<ort.InferenceSession> {
  ort.env.wasm.numThreads = 1;
  ort.env.wasm.wasmPaths = FROM;
  return ort.InferenceSession.create(await weights());
}

const read: ReadStrip = async (planes) => {
  session ??= load();
  const strip = new ort.Tensor("float32", planes, [1, 3, STRIP.rows, STRIP.columns]);
  const { toes } = await (await session).run({ strip });
  return toes!.data as Float32Array;
};

/** Reads a bead away from the screen's own thread; the runtime and the weights are fetched for the first one. */
self.onmessage = ({ data }: MessageEvent<Asked>) => {
  traceBead(data.image, data.line, read).then(
    (found) => self.postMessage({ found }),
    () => {
      session = null;
      self.postMessage({ failed: true });
    },
  );
};
