"use client";

import { useEffect, useRef, useState } from "react";
import {
  reduce,
  startHistory,
  type Drawing,
  type EditAction,
  type PhotoPoint,
  type Scale,
} from "@/lib/marks";
import type { Found } from "./found";
import { looksByItself } from "./looks-by-itself";
import type { WorkPhoto } from "./work-state";

const untouched = ({ scale, weldLine, marks, toes }: Drawing): boolean =>
  scale === null && weldLine === null && marks.length === 0 && toes === undefined;

/** Photos of this visit that were looked at: once each. */
const looked = new Set<string>();

/** Looks at a photo of a face on which nobody has drawn anything: for a scale, and for the weld. */
function useFound(photo: WorkPhoto, url: string) {
  const { id, role, widthPx, history } = photo;
  const [found, setFound] = useState<Found | null>(null);
  const latest = useRef(url);
  useEffect(() => {
    latest.current = url;
  }, [url]);
  const isHere = url !== "";
  useEffect(() => {
    if (!isHere || role !== "face" || looked.has(id) || !untouched(history.present) || !looksByItself())
      return undefined;
    looked.add(id);
    let gone = false;
    const tell = (part: Partial<Found>) => {
      const none: Found = {
        photoId: id,
        busy: true,
        scale: null,
        rim: null,
        words: null,
        line: null,
        said: null,
      };
      if (!gone) setFound((was) => ({ ...(was?.photoId === id ? was : none), ...part }));
    };
    tell({});
    void import("./look-at-photo")
      // Nobody asked for this look, so nothing is said when it does not come off.
      .then(({ lookAtPhoto }) => lookAtPhoto({ url: latest.current, widthPx }, tell))
      .catch(() => undefined)
      .finally(() => tell({ busy: false }));
    return () => {
      gone = true;
    };
    // What is drawn meanwhile does not begin another look.
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [id, role, widthPx, isHere]);
  return [found?.photoId === id ? found : null, setFound] as const;
}

/** The drawing with what was found in it, for the eye alone; what somebody drew stays. */
export function withFound<D extends Drawing>(drawing: D, found: Found | null): D {
  if (found === null) return drawing;
  return {
    ...drawing,
    scale: drawing.scale ?? found.scale ?? (found.rim && rimAlone(found.rim)),
    weldLine: drawing.weldLine ?? (found.line && [...found.line]),
  };
}

/** What was found on this photo, and what an action does: a proposed line that is dragged stays a proposal. */
export function useFoundOn(photo: WorkPhoto, url: string, act: (action: EditAction) => void) {
  const [found, setFound] = useFound(photo, url);
  const actOrDrag = (action: EditAction) => {
    const dragged = draggedLine(photo.history.present, found, action);
    if (dragged) setFound(dragged);
    else act(action);
  };
  return { found, setFound, actOrDrag };
}

/** A disc's rim for the eye: it is no scale before somebody says how wide the disc is. */
const rimAlone = (rim: readonly PhotoPoint[]): Scale => ({ kind: "disc", rim: [...rim], diameterMm: 1 });

/** A proposed line that was dragged; null: the action is about something else. */
function draggedLine(drawing: Drawing, found: Found | null, action: EditAction): Found | null {
  if (found === null || found.line === null || drawing.weldLine !== null || action.type !== "weldLine.set")
    return null;
  const { weldLine } = reduce(startHistory(drawing), action).present;
  return weldLine === null ? null : { ...found, line: weldLine };
}
