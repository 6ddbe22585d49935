import { Worker } from "node:worker_threads";
import { currentSite } from "@/lib/sites";
import { Stopped } from "./stopped";
import type { Answered, Asked, Done } from "./words";

export interface ThreadLimits {
  /** Of what the thread's own objects take, MiB. */
  readonly memoryMb: number;
  /** One answer may take so long: a head or a piece. */
  readonly deadlineMs: number;
  /** How long it stays warm with nothing to do. */
  readonly restMs: number;
}

/** A thread beside the serving one, started when it is first needed and kept warm (`asideThread`). */
export interface AsideThread {
  /**
   * What the work of this name comes to. `signal`: whoever asked went away; what is under way ends then, the thread with it
   * where nothing else is. Throws `Stopped` where thread or time ended, else what the work threw.
   */
  do(name: string, input: unknown, signal?: AbortSignal): Promise<Done<unknown>>;
  /** Ends the thread now; another piece of work starts it again. */
  end(): Promise<void>;
  isWarm(): boolean;
}

/** A thread that runs `script`, in which `serveWorks` answers. */
export function asideThread(script: string, limits: ThreadLimits): AsideThread {
  return new Thread(script, limits);
}

/** One piece of work that waits for an answer. */
interface Waiting {
  readonly answered: (said: Answered) => void;
  readonly failed: (why: Error) => void;
}

class Thread implements AsideThread {
  readonly #waiting = new Map<number, Waiting>();
  readonly #open = new Set<number>();
  #worker: Worker | null = null;
  #rest: NodeJS.Timeout | undefined;
  #count = 0;

  constructor(
    private readonly script: string,
    private readonly limits: ThreadLimits,
  ) {}

  isWarm(): boolean {
    return this.#worker !== null;
  }

  async end(code: Stopped["code"] = "aside-ended"): Promise<void> {
    const made = this.#worker;
    if (made === null) return;
    this.#lose(made, code);
    await made.terminate();
  }

  async do(name: string, input: unknown, signal?: AbortSignal): Promise<Done<unknown>> {
    if (signal?.aborted) throw new Stopped("aside-ended");
    clearTimeout(this.#rest);
    this.#worker ??= this.#start();
    const id = (this.#count += 1);
    this.#open.add(id);
    signal?.addEventListener("abort", () => this.#abort(id), { once: true });
    try {
      const said = await this.#ask({ id, what: "do", name, input, site: currentSite() });
      if (said.what !== "head") throw new Error(said.what === "failed" ? said.why : "no head");
      return { head: said.head, parts: this.#parts(id) };
    } catch (error) {
      this.#settle(id);
      throw error;
    }
  }

  #parts(id: number): Done<unknown>["parts"] {
    return {
      next: async () => {
        if (!this.#open.has(id)) throw new Stopped("aside-ended");
        const said = await this.#ask({ id, what: "more" });
        if (said.what === "piece") return { value: said.piece, done: false };
        this.#settle(id);
        if (said.what === "failed") throw new Error(said.why);
        return { value: undefined, done: true };
      },
      return: async () => {
        this.#stop(id);
        return { value: undefined, done: true };
      },
    };
  }

  #start(): Worker {
    const made = new Worker(/* turbopackIgnore: true */ this.script, {
      resourceLimits: { maxOldGenerationSizeMb: this.limits.memoryMb },
      execArgv: [],
    });
    made.on("message", (said: Answered) => this.#waiting.get(said.id)?.answered(said));
    made.on("error", (error: NodeJS.ErrnoException) =>
      this.#lose(made, error.code === "ERR_WORKER_OUT_OF_MEMORY" ? "aside-memory" : "aside-ended"),
    );
    made.on("exit", () => this.#lose(made, "aside-ended"));
    // A process with nothing else to do may end.
    made.unref();
    return made;
  }

  /** What still waits for a thread that is gone comes to nothing. */
  #lose(made: Worker, code: Stopped["code"]): void {
    if (this.#worker !== made) return;
    this.#worker = null;
    this.#open.clear();
    const all = [...this.#waiting.values()];
    this.#waiting.clear();
    for (const { failed } of all) failed(new Stopped(code));
  }

  #ask(asked: Asked): Promise<Answered> {
    return new Promise<Answered>((resolve, reject) => {
      // One that hangs takes the thread with it: nothing else stops it.
      const deadline = setTimeout(() => void this.end("aside-time"), this.limits.deadlineMs);
      this.#waiting.set(asked.id, {
        answered: (said) => {
          clearTimeout(deadline);
          this.#waiting.delete(asked.id);
          resolve(said);
        },
        failed: (why) => {
          clearTimeout(deadline);
          reject(why);
        },
      });
      this.#worker?.postMessage(asked);
    });
  }

  /** Alone it takes the thread along, which stops at once; beside others it ends at its next piece. */
  #abort(id: number): void {
    if (this.#open.size === 1 && this.#open.has(id)) void this.end();
    else this.#stop(id);
  }

  #stop(id: number): void {
    if (!this.#open.has(id)) return;
    this.#waiting.get(id)?.failed(new Stopped("aside-ended"));
    this.#waiting.delete(id);
    this.#worker?.postMessage({ id, what: "stop" } satisfies Asked);
    this.#settle(id);
  }

  #settle(id: number): void {
    if (!this.#open.delete(id) || this.#open.size > 0) return;
    clearTimeout(this.#rest);
    this.#rest = setTimeout(() => void (this.#open.size === 0 && this.end()), this.limits.restMs);
    this.#rest.unref();
  }
}
