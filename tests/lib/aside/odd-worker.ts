// Works that behave badly, in a thread of their own: what lib/aside/thread.ts must live with.
import { parentPort } from "node:worker_threads";
import { serveWorks } from "@/lib/aside/serve-works";
import type { Work } from "@/lib/aside/words";

let closed = 0;
let made = 0;

async function* counted(to: number): AsyncGenerator<string, void, void> {
  try {
    for (let i = 0; i < to; i += 1) {
      made += 1;
      yield String(i);
    }
  } finally {
    closed += 1;
  }
}

async function* none(): AsyncGenerator<string, void, void> {}

const works = {
  count: async (to: number) => ({ head: { to }, parts: counted(to) }),
  /** How many pieces were made, and how many counts came to their end or were broken off. */
  told: async () => ({ head: { made, closed }, parts: none() }),
  spin: async () => {
    for (;;) closed += 0;
  },
  hoard: async () => {
    const all: number[][] = [];
    for (;;) all.push(Array.from({ length: 100_000 }, (_, i) => i));
  },
  fail: async () => {
    throw new Error("ink is out");
  },
  pooled: async () => ({ head: null, parts: [Buffer.from("of a pool")].values() }),
} as unknown as Readonly<Record<string, Work<never, unknown>>>;

serveWorks(parentPort!, works);
