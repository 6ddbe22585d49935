"use client";

import { useEffect, useState } from "react";
import { newMarkId } from "@/components/canvas";
import { distance } from "@/lib/geometry";
import { newMark, type EditAction, type Mark, type Toes } from "@/lib/marks";
import type { Spot } from "@/lib/trace";
import { setSuggestsSpots, suggestsSpots } from "./suggests-spots";
import type { WorkPhoto } from "./work-state";

export type ShownSpot = Spot & { readonly id: string };

/** Suggestions on one photo: seen on it and kept nowhere; one that is taken is an ordinary mark from then on. */
export interface Spots {
  readonly on: boolean;
  readonly setOn: (on: boolean) => void;
  readonly busy: boolean;
  readonly said: string | null;
  /** Neither taken nor dismissed; null: not looked for. */
  readonly shown: readonly ShownSpot[] | null;
  readonly take: (id: string) => void;
  readonly dismiss: (ids: readonly string[]) => void;
}

const FAILED = "Holes and spatter could not be looked for just now. Switch it off and on to try again.";
const UNSURE = "As a whole the toes are a guess, so nothing is suggested. Drag them where they belong first.";

/** Looks once for each set of accepted toes, where it is switched on. `onSwitchedOn`: a person did that just now. */
export function useSpots(
  photo: WorkPhoto,
  url: string,
  onAction: (action: EditAction) => void,
  onSwitchedOn: () => void,
): Spots {
  const { toes, marks } = photo.history.present;
  const [on, setOn] = useState(false);
  const [dismissed, setDismissed] = useState<ReadonlySet<string>>(new Set());
  useEffect(() => setOn(suggestsSpots()), []);
  const looked = useLooked(photo, url, on);
  const shown = looked?.found?.filter((spot) => !dismissed.has(spot.id) && !isMarked(spot, marks)) ?? null;
  return {
    on,
    setOn: (next) => {
      setSuggestsSpots(next);
      setOn(next);
      setDismissed(new Set());
      if (next) onSwitchedOn();
    },
    busy: on && toes !== undefined && looked === null,
    said: looked?.said ?? null,
    shown,
    take: (id) => {
      const spot = shown?.find((one) => one.id === id);
      if (spot) onAction({ type: "mark.add", mark: markOf(spot, newMarkId()) });
    },
    dismiss: (ids) => setDismissed((old) => new Set([...old, ...ids])),
  };
}

interface Looked {
  readonly toes: Toes;
  readonly found: readonly ShownSpot[] | null;
  readonly said: string | null;
}

/** What was found about the toes that are there now; null: not asked, or not answered yet. */
function useLooked({ id, role, widthPx, history }: WorkPhoto, url: string, on: boolean): Looked | null {
  const { toes } = history.present;
  const [looked, setLooked] = useState<Looked | null>(null);
  const isAsked = on && role === "face" && toes !== undefined && url !== "";
  useEffect(() => {
    if (!isAsked) return undefined;
    let gone = false;
    const tell = (found: readonly Spot[] | null, said: string | null) => {
      const shown = found?.map((spot) => ({ ...spot, id: `${id} ${placeOf(spot)}` })) ?? null;
      if (!gone) setLooked({ toes, found: shown, said });
    };
    setLooked(null);
    import("./read-toes")
      .then(({ lookForSpots }) => lookForSpots({ url, widthPx }, toes))
      .then(
        (found) => tell(found, found === null ? UNSURE : null),
        () => tell(null, FAILED),
      );
    return () => {
      gone = true;
    };
    // The address of a picture changes now and then; what it shows does not.
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [isAsked, toes, id, widthPx]);
  return isAsked && looked !== null && looked.toes === toes ? looked : null;
}

/** By its place, so that what was dismissed stays so when the toes are moved and it is found again there. */
const placeOf = ({ kind, at }: Spot): string => `${kind} ${Math.round(at.x)} ${Math.round(at.y)}`;

/** The person's mark of what was suggested: a ring that counts, moves and is named as any other. */
export function markOf({ kind, at, radiusPx }: Spot, id: string): Mark {
  const round = (value: number): number => Math.round(10 * value) / 10;
  const shape = {
    kind: "point",
    at: { x: round(at.x), y: round(at.y) },
    radius: Math.max(0.5, round(radiusPx)),
  } as const;
  return { ...newMark(id, kind === "hole" ? "surface-porosity" : "spatter", shape), origin: "suggested" };
}

/** Whether a round mark lies there already, whoever made it. */
function isMarked({ at, radiusPx }: Spot, marks: readonly Mark[]): boolean {
  return marks.some(
    ({ shape }) =>
      shape.kind === "point" && distance(shape.at, at) < 0.7 * Math.max(radiusPx, shape.radius ?? 0),
  );
}
