import { keyOf } from "./kept";

/** How long to wait for a lock that a closing window may be about to let go, ms. */
const CLOSING_MS = 700;
/** Where there are no locks (plain http), work untouched for so long is taken to be nobody's, ms. */
const LEFT_ALONE_MS = 60_000;

const nameOf = (key: string): string => `toeline-work:${key}`;
/** In this very page; the only thing known where there are no locks. */
const here = new Set<string>();

const locks = (): LockManager | null => (typeof navigator === "undefined" ? null : (navigator.locks ?? null));

const WINDOW = "toeline-window";

/**
 * This window's id among those of this device. With locks a new one for each page; where there are none (plain http), a
 * page that is loaded again keeps it, and so finds its own work without knowing whether anybody else has it.
 */
function windowId(fresh: () => string): string {
  const [navigation] = performance.getEntriesByType("navigation") as PerformanceNavigationTiming[];
  const before = locks() || navigation?.type !== "reload" ? null : sessionStorage.getItem(WINDOW);
  const id = before ?? fresh();
  sessionStorage.setItem(WINDOW, id);
  return id;
}

/** Says to every window of this device that this work is under a hand. Returns how to let it go. */
function holdWork(key: string): () => void {
  here.add(key);
  let letGo = (): void => undefined;
  const done = new Promise<void>((resolve) => {
    letGo = resolve;
  });
  void locks()?.request(nameOf(key), () => done);
  return () => {
    here.delete(key);
    letGo();
  };
}

/** Whether a workbench of this very window shows the bead: it sees to its own work, and to what others left of it. */
function isOpenHere(beadId: string): boolean {
  return [...here].some((key) => key.startsWith(keyOf(beadId, "")));
}

/**
 * Does `work` if nobody has that work under a hand, and keeps others off meanwhile; null where somebody has.
 *
 * @param untouchedMs How long ago it was last written.
 */
async function withLeftWork<T>(key: string, untouchedMs: number, work: () => Promise<T>): Promise<T | null> {
  if (here.has(key)) return null;
  const manager = locks();
  if (!manager) return untouchedMs > LEFT_ALONE_MS ? work() : null;
  const signal = AbortSignal.timeout(CLOSING_MS);
  return manager
    .request(nameOf(key), { signal }, () => work())
    .catch((error: unknown) => {
      if (error instanceof DOMException && /Abort|Timeout/.test(error.name)) return null;
      throw error;
    });
}

/** How windows of one device know of each other. */
export const windowsHere = { windowId, holdWork, isOpenHere, withLeftWork };
export type Windows = Omit<typeof windowsHere, "isOpenHere">;
