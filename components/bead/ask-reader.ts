import type { Result } from "@/lib/base";
import type { Point } from "@/lib/geometry";
import type { Toes } from "@/lib/marks";
import type { Pixels, ProposedLine, Spot, Trace, TraceIssue } from "@/lib/trace";

interface Answered {
  readonly id: number;
  readonly found?: unknown;
}

interface Waiting {
  readonly resolve: (found: unknown) => void;
  readonly reject: (error: Error) => void;
}

let worker: Worker | null = null;
let last = 0;
const waiting = new Map<number, Waiting>();

/** One worker for the visit: the runtime it fetched is not fetched again. */
function theWorker(): Worker {
  if (worker !== null) return worker;
  const made = new Worker(new URL("./trace-worker.ts", import.meta.url), { type: "module" });
  made.onmessage = ({ data }: MessageEvent<Answered>) => {
    const one = waiting.get(data.id);
    waiting.delete(data.id);
    if (data.found === undefined) one?.reject(new Error("the reader gave up"));
    else one?.resolve(data.found);
  };
  made.onerror = () => {
    made.terminate();
    worker = null;
    for (const one of waiting.values()) one.reject(new Error("the reader ended early"));
    waiting.clear();
  };
  worker = made;
  return made;
}

function ask(
  image: Pixels,
  about: { readonly line: readonly Point<"photo">[] | null; readonly about?: Toes },
): Promise<unknown> {
  const id = ++last;
  return new Promise((resolve, reject) => {
    waiting.set(id, { resolve, reject });
    const { width, height, data } = image;
    theWorker().postMessage({ id, image: { width, height, data }, ...about }, [data.buffer as ArrayBuffer]);
  });
}

/** The bead along a line, in the image's pixels. The image's bytes are handed over. Rejects when nothing answers. */
export const askForTrace = (
  image: Pixels,
  line: readonly Point<"photo">[],
): Promise<Result<Trace, TraceIssue>> => ask(image, { line }) as Promise<Result<Trace, TraceIssue>>;

/** Where a bead runs in the image, likewise. */
export const askForLine = (image: Pixels): Promise<Result<ProposedLine, TraceIssue>> =>
  ask(image, { line: null }) as Promise<Result<ProposedLine, TraceIssue>>;

/** What may be holes and spatter about a bead with these toes, likewise. */
export const askForSpots = (image: Pixels, about: Toes): Promise<readonly Spot[]> =>
  ask(image, { line: null, about }) as Promise<readonly Spot[]>;
