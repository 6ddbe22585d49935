"use client";

import dynamic from "next/dynamic";
import { useEffect, useId, type KeyboardEvent, type ReactNode, type RefObject } from "react";
import type { Primitive } from "@/lib/marks";
import styles from "./easel.module.css";
import { DetailFilter } from "./detail-filter";
import { asTaken, eyeFilter, isAsTaken, type EyeLook } from "./eye-look";
import { Loupe } from "./loupe";
import type { EaselState } from "./use-easel";
import type { LoupePlace, PointerListeners } from "./use-pointers";
import type { ViewControl } from "./use-view";
import { ZoomButtons } from "./zoom-buttons";

/** Konva paints in the browser only, and comes by itself: whoever draws nothing never loads it. */
const CanvasStage = dynamic(() => import("./stage"), { ssr: false });

/** What is said of the canvas, and what is told to tests in data attributes. */
export interface EaselWords {
  readonly testId: string;
  /** What it is called where its photo has no name. */
  readonly name: string;
  /** What kind of thing it is, for a screen reader. */
  readonly kind: string;
  readonly keyHelp: string;
  /** When the photo did not load. */
  readonly failed: string;
  readonly data: Readonly<Record<`data-${string}`, string | number>>;
}

interface EaselProps {
  readonly easel: EaselState;
  readonly words: EaselWords;
  readonly onKeyDown: (event: KeyboardEvent) => void;
  readonly listeners: PointerListeners;
  /** Painted over the photo: what stands, then what the hand holds. */
  readonly marks: readonly Primitive[];
  readonly draft: readonly Primitive[];
  /** Where the magnifier looks; null while no finger hides a point. */
  readonly loupe: LoupePlace | null;
  /** How the photo is brought to the eye; left out: as taken. */
  readonly look?: EyeLook;
  /** What lies over the photo beside this. */
  readonly children?: ReactNode;
}

/** The photo under the hand: the one element that is touched, clicked and typed at, with magnifier and zoom buttons. */
export function Easel(props: EaselProps) {
  const { easel, words, marks, draft, loupe, look = asTaken } = props;
  const { photo, box, control, loaded } = easel;
  const keysId = useId();
  return (
    <>
      <Surface {...props} keysId={keysId} />
      <DetailFilter share={look.detail} />
      {!isAsTaken(look) && (
        <p className={styles.printed}>
          Printed as taken: on the screen its light was changed for the eye only.
        </p>
      )}
      <p id={keysId} className="visually-hidden">
        {words.keyHelp}
      </p>
      {loaded.state === "failed" && (
        <p className={styles.failed} role="alert">
          {words.failed}
        </p>
      )}
      <ZoomButtons onZoom={control.zoomBy} onFit={control.fit} />
      {loupe && (
        <Loupe
          place={loupe}
          {...{ box, photo }}
          zoom={control.view.zoom}
          picture={loaded.levels[0] ?? null}
          paintings={[marks, draft]}
        />
      )}
      {props.children}
    </>
  );
}

function Surface({
  easel: { photo, boxRef, box, control, loaded },
  words,
  keysId,
  onKeyDown,
  listeners,
  marks,
  draft,
  look = asTaken,
}: EaselProps & { /** Of the element that explains the keys. */ keysId: string }) {
  const { view } = control;
  useToldView(boxRef, control);
  return (
    <div
      ref={boxRef}
      className={styles.photo}
      role="application"
      tabIndex={0}
      aria-label={photo.name ?? words.name}
      aria-roledescription={words.kind}
      aria-describedby={keysId}
      data-testid={words.testId}
      data-zoom={view.zoom}
      data-pan-x={view.pan.x}
      data-pan-y={view.pan.y}
      data-photo-state={loaded.state}
      {...words.data}
      onKeyDownCapture={control.rest}
      onKeyDown={onKeyDown}
      {...listeners}
    >
      {box.width > 0 && (
        <CanvasStage
          {...{ box, control, photo, marks, draft }}
          levels={loaded.levels}
          filter={eyeFilter(look)}
        />
      )}
    </div>
  );
}

/** The element says where the photo lies at every moment, also while nothing else is told of it. */
function useToldView(box: RefObject<HTMLDivElement | null>, { live }: ViewControl): void {
  useEffect(
    () =>
      live.follow(({ zoom, pan }) => {
        const told = { "data-zoom": zoom, "data-pan-x": pan.x, "data-pan-y": pan.y };
        for (const [name, value] of Object.entries(told)) box.current?.setAttribute(name, String(value));
      }),
    [box, live],
  );
}

/** Keeps the place free until a canvas has arrived. */
export const EaselWaiting = () => <div className={styles.waiting}>Loading the photo …</div>;
