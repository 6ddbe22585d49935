import { parentPort, workerData } from "node:worker_threads";
import { runBand, type BandJob, type BandPhase } from "./bands";

/** A thread that does the rows it is told to, and says when they are done. */
const job = workerData as BandJob;
parentPort?.on("message", (order: { phase: BandPhase; from: number; to: number }) => {
  runBand(job, order.phase, order.from, order.to);
  parentPort?.postMessage("done");
});
