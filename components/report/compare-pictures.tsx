"use client";

import { Maximize2, Minus, Plus } from "lucide-react";
import { useRef, useState, type ReactNode } from "react";
import { Button, Chip } from "@/components/ui";
import type { LengthSystem } from "@/lib/units";
import styles from "./compare-pictures.module.css";
import { rulerSeen, wholePair, zoomPair, type PairView } from "./pair-view";
import { Ruler } from "./ruler";
import { usePairHands, useWheelOn, type PairHands } from "./use-pair-hands";

/** A picture laid along its weld: quick to come, fine to look into, and its marks. */
export interface LaidParts {
  readonly small: ReactNode;
  readonly fine: ReactNode;
  readonly marks: ReactNode;
  /** Height over width. */
  readonly height: number;
}

/** A bead's picture and what stands above and below it. */
export interface ComparedPicture {
  readonly name: string;
  readonly heading: ReactNode;
  /** null: it has no photo. */
  readonly laid: LaidParts | null;
  readonly rulerMm: { readonly from: number; readonly to: number } | null;
  readonly words: ReactNode;
}

interface Props {
  readonly before: ComparedPicture;
  readonly after: ComparedPicture;
  /** Both are laid along their welds: one over the other means something. */
  readonly mayLieOver: boolean;
  /** One ruler serves both. */
  readonly isShared: boolean;
  readonly system: LengthSystem;
}

/** From so many times on the fine picture is fetched. */
const FINE = 1.8;

/**
 * Two pictures looked at together: zoomed and moved as one, beside one another, or one over the other with an edge drawn
 * across. By finger, mouse, wheel, keys or buttons.
 */
export function ComparePictures({ before, after, mayLieOver, isShared, system }: Props) {
  const [view, setView] = useState(wholePair);
  const [isOver, setOver] = useState(false);
  const [isMarked, setMarked] = useState(true);
  const height = before.laid?.height ?? after.laid?.height ?? 1;
  const hands = usePairHands(view, setView, height);
  const shown = { view, hands, isMarked };
  return (
    <div className={styles.pictures}>
      <div className={styles.bar} role="group" aria-label="How the two are looked at">
        <Chip on={!isOver} onClick={() => setOver(false)}>
          Side by side
        </Chip>
        <Chip on={isOver} disabled={!mayLieOver} onClick={() => setOver(true)}>
          One over the other
        </Chip>
        <Chip on={isMarked} onClick={() => setMarked(!isMarked)}>
          Marks
        </Chip>
        <ViewButtons {...{ view, height }} onView={setView} />
      </div>
      {!mayLieOver && (
        <p className={styles.note}>To lay one over the other, mark the weld line on both photos.</p>
      )}
      {isOver ? (
        <Over {...{ before, after, system }} {...shown} />
      ) : (
        <div className={styles.pair} data-shared={isShared}>
          <Half side={before} {...shown} system={system} />
          <Half side={after} {...shown} system={system} />
        </div>
      )}
    </div>
  );
}

interface Shown {
  readonly view: PairView;
  readonly hands: PairHands;
  readonly isMarked: boolean;
}

function ViewButtons({
  view,
  onView,
  height,
}: {
  view: PairView;
  onView: (view: PairView) => void;
  height: number;
}) {
  const by = (factor: number) => onView(zoomPair(view, factor, { x: 0.5, y: height / 2 }, height));
  return (
    <span className={styles.zoom} role="group" aria-label="Zoom both">
      <Button aria-label="Zoom both in" onClick={() => by(1.6)}>
        <Plus aria-hidden="true" size={20} />
      </Button>
      <Button aria-label="Zoom both out" onClick={() => by(1 / 1.6)}>
        <Minus aria-hidden="true" size={20} />
      </Button>
      <Button aria-label="Fit both" onClick={() => onView(wholePair)}>
        <Maximize2 aria-hidden="true" size={20} />
      </Button>
      <output className={styles.times}>{view.k === 1 ? "whole" : `${view.k.toFixed(1)} ×`}</output>
    </span>
  );
}

function Half({ side, system, ...shown }: Shown & { side: ComparedPicture; system: LengthSystem }) {
  return (
    <section className={styles.half}>
      <h2>{side.heading}</h2>
      {side.laid ? (
        <Pane {...shown} name={side.name} height={side.laid.height}>
          <Laid {...shown} laid={side.laid} />
        </Pane>
      ) : (
        <p>No photo.</p>
      )}
      <div className={styles.below}>
        {side.rulerMm && <Ruler rulerMm={rulerSeen(side.rulerMm, shown.view)} system={system} />}
      </div>
      <div className={styles.words}>{side.words}</div>
    </section>
  );
}

/** The second lies over the first, right of an edge that is drawn across. */
function Over({ before, after, system, ...shown }: Shown & Pick<Props, "before" | "after" | "system">) {
  const [edge, setEdge] = useState(50);
  if (!before.laid || !after.laid) return null;
  const ruler = before.rulerMm ?? after.rulerMm;
  return (
    <section className={styles.over}>
      <Pane {...shown} name={`${before.name} and ${after.name}`} height={before.laid.height}>
        <div className={styles.top} style={{ clipPath: `inset(0 ${100 - edge}% 0 0)` }}>
          <Laid {...shown} laid={before.laid} />
        </div>
        <div className={styles.top} style={{ clipPath: `inset(0 0 0 ${edge}%)` }}>
          <Laid {...shown} laid={after.laid} />
        </div>
        <div className={styles.edge} style={{ left: `${edge}%` }} />
      </Pane>
      <label className={styles.slider}>
        <span>{before.name}</span>
        <input
          type="range"
          min={0}
          max={100}
          value={edge}
          aria-label={`Edge between ${before.name} and ${after.name}`}
          onChange={(event) => setEdge(Number(event.target.value))}
        />
        <span>{after.name}</span>
      </label>
      {ruler && <Ruler rulerMm={rulerSeen(ruler, shown.view)} system={system} />}
      <div className={styles.both}>
        <div className={styles.words}>{before.words}</div>
        <div className={styles.words}>{after.words}</div>
      </div>
    </section>
  );
}

/** A window onto the picture: what is touched, dragged, wheeled and typed at. */
function Pane({
  view,
  hands,
  name,
  height,
  children,
}: Shown & { name: string; height: number; children: ReactNode }) {
  const pane = useRef<HTMLDivElement>(null);
  useWheelOn(pane, hands.onWheel);
  return (
    <div
      ref={pane}
      className={styles.pane}
      style={{ aspectRatio: `1 / ${height}` }}
      data-zoomed={view.k > 1}
      data-testid="compare-pane"
      data-view={`${view.k.toFixed(3)} ${view.x.toFixed(3)} ${view.y.toFixed(3)}`}
      role="application"
      aria-label={`${name}. Plus and minus zoom both, arrows move both, zero shows the whole.`}
      tabIndex={0}
      {...hands.listeners}
    >
      {children}
    </div>
  );
}

function Laid({ laid, view, isMarked }: Pick<Shown, "view" | "isMarked"> & { laid: LaidParts }) {
  const { k, x, y } = view;
  return (
    <div
      className={styles.laid}
      style={{
        aspectRatio: `1 / ${laid.height}`,
        transform: `translate(${x * 100}cqw, ${y * 100}cqw) scale(${k})`,
      }}
    >
      <div className={styles.box}>
        {laid.small}
        {k >= FINE && laid.fine}
        {isMarked && laid.marks}
      </div>
    </div>
  );
}
