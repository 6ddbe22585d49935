import { traceBead } from "@/lib/trace";
import { nodeReader } from "../node-reader";
import { tracePicture } from "./pictures";

const TURNS = 9;

export interface TraceTime {
  /** Medians over some turns, seconds: by the clock, and of processor time, which other work on the machine disturbs less. */
  readonly clock: number;
  readonly processor: number;
}

/**
 * One rendered bead traced on a picture of 1.2 megapixels by the shipped weights: two looks, the paths and the ripples, in WebAssembly
 * on one thread. The runtime and the weights are loaded before.
 */
export async function traceTime(): Promise<TraceTime> {
  const read = await nodeReader();
  const { image, picked } = tracePicture("kept-plain", 3);
  const line = picked!;
  const turns: { clock: number; processor: number }[] = [];
  for (let turn = 0; turn <= TURNS; turn++) {
    const [from, used] = [performance.now(), process.cpuUsage()];
    const traced = await traceBead(image, line, read);
    if (!traced.ok) throw new Error(`the bead must be read: ${traced.issues[0]!.code}`);
    const { user, system } = process.cpuUsage(used);
    turns.push({ clock: (performance.now() - from) / 1000, processor: (user + system) / 1e6 });
  }
  const median = (of: (one: (typeof turns)[number]) => number): number =>
    turns
      .slice(1)
      .map(of)
      .toSorted((a, b) => a - b)[TURNS >> 1]!;
  return { clock: median(({ clock }) => clock), processor: median(({ processor }) => processor) };
}
