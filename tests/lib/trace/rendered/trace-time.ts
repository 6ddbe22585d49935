import { proposeLine, traceBead } from "@/lib/trace";
import { traceAlone } from "@/lib/trace/trace-bead";
import { nodeFinder, nodeReader } from "../node-reader";
import { tracePicture } from "./pictures";

const TURNS = 9;

export interface TraceTime {
  /** Medians over some turns, seconds: by the clock, and of processor time, which other work on the machine disturbs less. */
  readonly clock: number;
  readonly processor: number;
}

/**
 * One rendered bead traced on a picture of 1.2 megapixels by the shipped weights, in WebAssembly on one thread: the two looks
 * along it alone, and with what is looked at beside it. The runtime and the weights are loaded before.
 */
export async function traceTimes(): Promise<{ readonly alone: TraceTime; readonly whole: TraceTime }> {
  const read = await nodeReader();
  const { image, picked } = tracePicture("kept-plain", 3);
  const line = picked!;
  return {
    alone: await medianTime(() => traceAlone(image, line, read)),
    whole: await medianTime(() => traceBead(image, line, read)),
  };
}

/** Likewise a weld line proposed without a click, with the looks on either side of it. */
export async function proposalTime(): Promise<TraceTime> {
  const [read, readWhole] = [await nodeReader(), await nodeFinder()];
  // A picture on which a line is proposed: a refusal may come after fewer looks.
  const { image } = tracePicture("refusal", 1010);
  return medianTime(() => proposeLine(image, readWhole, read));
}

async function medianTime(work: () => Promise<{ readonly ok: boolean }>): Promise<TraceTime> {
  const turns: { clock: number; processor: number }[] = [];
  for (let turn = 0; turn <= TURNS; turn++) {
    const [from, used] = [performance.now(), process.cpuUsage()];
    if (!(await work()).ok) throw new Error("the bead must be read, and its line proposed");
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
