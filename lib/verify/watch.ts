import { setImmediate as turn } from "node:timers/promises";

/** What is looked at just now, in this order. */
export type Part = "log" | "records" | "photos" | "frozen texts" | "signatures" | "lists and figures";

/** How far a walk is: whoever waits for it may be told, and may stop it. */
export interface Watch {
  readonly onProgress?: (part: Part, looked: number) => void;
  readonly signal?: AbortSignal;
}

/** Between two slices: says how far it is, lets others have their turn, and throws the signal's reason once it is to stop. */
export async function step({ onProgress, signal }: Watch, part: Part, looked: number): Promise<void> {
  onProgress?.(part, looked);
  await turn();
  signal?.throwIfAborted();
}
