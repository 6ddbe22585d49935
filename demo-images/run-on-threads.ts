import { Worker } from "node:worker_threads";
import { bandPhases, bandRows, closePhase, type BandJob, type BandPhase } from "./bands";

const BANDS_PER_THREAD = 8;

/** A worker does not inherit the loader that reads TypeScript, so it registers its own before the first import. */
function startWorker(job: BandJob): Worker {
  const loader = import.meta.resolve("tsx/esm/api");
  const entry = new URL("./band-worker.ts", import.meta.url).href;
  const source = `import(${JSON.stringify(loader)}).then(({ register }) => { register(); return import(${JSON.stringify(entry)}); });`;
  return new Worker(source, { eval: true, workerData: job, execArgv: [] });
}

/** One worker takes bands from the common queue until none is left. */
function drain(worker: Worker, phase: BandPhase, queue: [number, number][]): Promise<void> {
  return new Promise((resolve, reject) => {
    const next = (): void => {
      const band = queue.shift();
      if (band === undefined) {
        worker.off("message", next);
        worker.off("error", reject);
        resolve();
        return;
      }
      worker.postMessage({ phase, from: band[0], to: band[1] });
    };
    worker.on("message", next);
    worker.on("error", reject);
    next();
  });
}

/** Does all phases of the job on worker threads; the shared arrays of the job hold the result. */
export async function runOnThreads(job: BandJob, threads: number): Promise<void> {
  const workers = Array.from({ length: Math.max(1, threads) }, () => startWorker(job));
  try {
    for (const phase of bandPhases) {
      const rows = bandRows(job, phase);
      const size = Math.ceil(rows / (workers.length * BANDS_PER_THREAD));
      const queue: [number, number][] = [];
      for (let from = 0; from < rows; from += size) queue.push([from, Math.min(rows, from + size)]);
      await Promise.all(workers.map((worker) => drain(worker, phase, queue)));
      closePhase(job, phase);
    }
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()));
  }
}
