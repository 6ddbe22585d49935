// Decodes one HEIF picture in a thread of its own: the decoder (libheif as WASM) works in one go for up to seconds,
// never gives its memory back, and may not end on a hostile file. Its parent ends the thread after the answer or a
// deadline. Plain JavaScript, because Node starts it by its path, beside the bundle.
import { parentPort, workerData } from "node:worker_threads";
import heic from "heic-decode";

const pictures = await heic.all({ buffer: workerData.bytes });
const [picture] = pictures;
const { width, height } = picture;
// The header was checked by another reader; this is the size the decoder itself is about to allocate.
if (pictures.length !== 1 || width * height > workerData.maxPixels) {
  parentPort.postMessage(null);
} else {
  const { data } = await picture.decode();
  parentPort.postMessage({ width, height, data }, [data.buffer]);
}
