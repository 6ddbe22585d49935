import type { Result } from "@/lib/base";
import type { Point } from "@/lib/geometry";
import type { Toes } from "@/lib/marks";
import { toesOf, type Trace, type TraceIssue } from "@/lib/trace";
import { photoPixels } from "./photo-pixels";

interface Answered {
  readonly found?: Result<Trace, TraceIssue>;
}

let worker: Worker | null = null;

/** One worker for the visit: the runtime it fetched is not fetched again. */
const theWorker = (): Worker =>
  (worker ??= new Worker(new URL("./trace-worker.ts", import.meta.url), { type: "module" }));

/** Both toes along the weld line, in the drawing's pixels, or why they cannot be read. Throws when nothing answers. */
export async function readToes(
  photo: { readonly url: string; readonly widthPx: number },
  weldLine: readonly Point<"photo">[],
): Promise<Result<Toes, TraceIssue>> {
  const image = await photoPixels(photo.url);
  const factor = photo.widthPx / image.width;
  const line = weldLine.map(({ x, y }) => ({ x: x / factor, y: y / factor }));
  const found = await ask({ width: image.width, height: image.height, data: image.data }, line);
  if (!found.ok) return found;
  const toes = toesOf(found.value);
  const grown = (list: Toes["upper"]): Toes["upper"] =>
    list.map((p) => ({ ...p, x: p.x * factor, y: p.y * factor, sigmaPx: p.sigmaPx * factor }));
  return { ok: true, value: { ...toes, upper: grown(toes.upper), lower: grown(toes.lower) } };
}

function ask(
  image: Pick<ImageData, "width" | "height" | "data">,
  line: readonly Point<"photo">[],
): Promise<Result<Trace, TraceIssue>> {
  const asked = theWorker();
  return new Promise<Result<Trace, TraceIssue>>((resolve, reject) => {
    const giveUp = (): void => {
      asked.terminate();
      worker = null;
      reject(new Error("the reader ended early"));
    };
    asked.onmessage = ({ data }: MessageEvent<Answered>) => (data.found ? resolve(data.found) : giveUp());
    asked.onerror = giveUp;
    asked.postMessage({ image, line }, [image.data.buffer]);
  });
}
