"use client";

import {
  lazy,
  startTransition,
  Suspense,
  useEffect,
  useMemo,
  useRef,
  useState,
  type ComponentType,
  type ReactElement,
  type RefObject,
} from "react";
import { COMING, takeUp } from "./early";
import type { Later } from "./later";
import styles from "./later-part.module.css";

/**
 * A part of a page whose code comes later. What the server wrote of it stands until then and is taken over as it is: the
 * code must therefore come to the same as the server did for the first properties. Where no server wrote it, its place is
 * empty until the code is here. Its style sheets have to come with the page. What is typed or pressed in it until then is
 * taken up once the code is here, and has it brought at once.
 */
export function laterPart<T, P extends object>(
  code: Later<T>,
  pick: (here: T) => ComponentType<P>,
): ComponentType<P> {
  const Coming = lazy(async () => ({ default: pick(await arrived(code)) }));
  return function LaterPart(props: P): ReactElement {
    const [Part] = useState(() => partNow(code, pick) ?? Coming);
    const [first] = useState(props);
    const isHere = useHere(code);
    const shown = isHere ? props : first;
    const place = useRef<HTMLDivElement>(null);
    useAskedFor(place, code);
    // The very same element while the code is away: an update of what the server wrote would take it off the page.
    return useMemo(
      () => (
        <div ref={place} className={styles.place} {...{ [COMING]: "" }}>
          <Suspense>
            <Part {...shown} />
            {isHere && <TakenUp place={place} />}
          </Suspense>
        </div>
      ),
      [Part, shown, isHere],
    );
  };
}

/** Stands beside the part, so it is there when the part is; and that knows by then what changed since the server wrote it. */
function TakenUp({ place }: { readonly place: RefObject<HTMLDivElement | null> }) {
  useEffect(() => {
    if (place.current) takeUp(place.current);
  }, [place]);
  return null;
}

/** Whoever reaches for the part does not wait until the browser rests. React hears nothing of what happens in there yet. */
function useAskedFor(place: RefObject<HTMLDivElement | null>, code: Later<unknown>): void {
  useEffect(() => {
    const element = place.current;
    // What cannot come now is asked for again at rest.
    const ask = (): void => void code.load().catch(() => undefined);
    element?.addEventListener("pointerdown", ask, { once: true });
    element?.addEventListener("focusin", ask, { once: true });
    return () => {
      element?.removeEventListener("pointerdown", ask);
      element?.removeEventListener("focusin", ask);
    };
  }, [place, code]);
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
