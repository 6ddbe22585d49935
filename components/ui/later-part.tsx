"use client";

import {
  lazy,
  startTransition,
  Suspense,
  useEffect,
  useMemo,
  useState,
  type ComponentType,
  type ReactElement,
} from "react";
import type { Later } from "./later";

/**
 * A part of a page whose code comes later. What the server wrote of it stands until then and is taken over as it is: the
 * code must therefore come to the same as the server did for the first properties. Where no server wrote it, its place is
 * empty until the code is here. Its style sheets have to come with the page.
 */
export function laterPart<T, P extends object>(
  code: Later<T>,
  pick: (here: T) => ComponentType<P>,
): ComponentType<P> {
  const Coming = lazy(async () => ({ default: pick(await arrived(code)) }));
  return function LaterPart(props: P): ReactElement {
    const [Part] = useState(() => partNow(code, pick) ?? Coming);
    const [first] = useState(props);
    const shown = useHere(code) ? props : first;
    // The very same element while the code is away: an update of what the server wrote would take it off the page.
    return useMemo(
      () => (
        <Suspense>
          <Part {...shown} />
        </Suspense>
      ),
      [Part, shown],
    );
  };
}

/** In an object, because state that is given a function calls it. */
function partNow<T, P extends object>(
  code: Later<T>,
  pick: (here: T) => ComponentType<P>,
): ComponentType<P> | null {
  const here = code.now();
  return here === null ? null : pick(here);
}

/** On the server at once: there is no page that could wait for its rest. */
const arrived = <T,>(code: Later<T>): Promise<T> =>
  typeof window === "undefined" ? code.load() : code.arrival();

/** Whether the code is here. Told in a transition, so that nothing that stands gives way to an empty place. */
function useHere<T>(code: Later<T>): boolean {
  const [isHere, setHere] = useState(() => code.now() !== null);
  useEffect(() => {
    let gone = false;
    void code.arrival().then(() => {
      if (!gone) startTransition(() => setHere(true));
    });
    const stop = code.loadAtRest();
    return () => {
      gone = true;
      stop();
    };
  }, [code]);
  return isHere;
}
