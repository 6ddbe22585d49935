/** Code that a page stands without: it comes when it is first asked for, or once the page stands and the browser rests. */
export interface Later<T> {
  /** null: it is not here yet. */
  readonly now: () => T | null;
  /** Brings it; rejects where it cannot come, and may be asked again. */
  readonly load: () => Promise<T>;
  /** As `load` once the browser rests, and again until it is here: a line that is away comes back. Returns how to stop. */
  readonly loadAtRest: () => () => void;
  readonly subscribe: (listener: () => void) => () => void;
  /** Settles once it is here, whoever has it brought. */
  readonly arrival: () => Promise<T>;
}

/** Latest moment even when the browser stays busy, ms. */
const LATEST_MS = 2_000;
/** Until it is asked for again where it could not come, ms. */
const AGAIN_MS = 3_000;

export function later<T>(bring: () => Promise<T>): Later<T> {
  let here: T | null = null;
  let coming: Promise<T> | null = null;
  const listeners = new Set<() => void>();
  let tell: (value: T) => void;
  const arrival = new Promise<T>((resolve) => {
    tell = resolve;
  });
  const arrived = (value: T): T => {
    here = value;
    tell(value);
    for (const listener of listeners) listener();
    return value;
  };
  const load = (): Promise<T> => {
    coming ??= bring().then(arrived, (error: unknown) => {
      coming = null;
      throw error;
    });
    return coming;
  };
  return {
    now: () => here,
    load,
    loadAtRest: () => (here === null ? untilHere(load) : () => undefined),
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    arrival: () => arrival,
  };
}

function untilHere(load: () => Promise<unknown>): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let stopped = false;
  const go = (): void => {
    load().catch(() => {
      if (!stopped) timer = setTimeout(go, AGAIN_MS);
    });
  };
  const callOff = atRest(go);
  return () => {
    stopped = true;
    callOff();
    clearTimeout(timer);
  };
}

/** Runs once everything the page itself brought is there and the browser has time. Returns how to call it off. */
function atRest(run: () => void): () => void {
  let callOff: () => void = () => undefined;
  const wait = (): void => {
    if (typeof window.requestIdleCallback === "function") {
      const id = window.requestIdleCallback(run, { timeout: LATEST_MS });
      callOff = () => window.cancelIdleCallback(id);
    } else {
      const id = window.setTimeout(run, 200);
      callOff = () => window.clearTimeout(id);
    }
  };
  if (document.readyState === "complete") wait();
  else {
    window.addEventListener("load", wait, { once: true });
    callOff = () => window.removeEventListener("load", wait);
  }
  return () => callOff();
}
