"use client";

import { useState, type KeyboardEvent, type ReactNode } from "react";
import {
  crossPicture,
  Easel,
  undoCommand,
  useEasel,
  useWindowKeys,
  type EaselState,
} from "@/components/canvas-kit";
import { useLater } from "@/components/ui";
import styles from "./bead-canvas.module.css";
import { wholePath } from "./draft";
import { DraftBar } from "./draft-bar";
import { draftPicture, handlePicture } from "./draft-picture";
import type { Scenery } from "./gesture";
import { handlesOf } from "./handles";
import { overPhoto } from "./over-photo-code";
import { loupeCentre, shapeOfDraft } from "./preview";
import { ShapeNamer } from "./shape-namer";
import { suggestedPicture } from "./suggested";
import { ToolBar } from "./tool-bar";
import type { TagLevel } from "./tag-level";
import { toolsMissing } from "./tools-missing";
import type { BeadCanvasProps } from "./types";
import { useFollowedEdges } from "./use-followed-edges";
import { useHands } from "./use-hands";
import { useKeys } from "./use-keys";
import { useMarking, type Marking } from "./use-marking";
import { usePickedPoint } from "./use-picked-point";
import { useScene } from "./use-scene";
import { plainView, ViewBar, type ViewChoice } from "./view-bar";
import { keyHelp } from "./words";

/** The photo with its marks: everything a hand, a mouse or a keyboard does to it becomes one action per gesture. */
export default function BeadCanvas(props: BeadCanvasProps) {
  const { history, readOnly = false } = props;
  const easel = useEasel(props.photo);
  const marking = useMarking(props);
  const [shown, setShown] = useState(plainView);
  const [keysShown, showKeys] = useState(false);
  const { draft } = marking;
  const { marks, drafted, picked, loupe, listeners, onKeyDown } = useBoard(props, easel, marking, shown.tags);
  const onView = (change: Partial<ViewChoice>) => setShown((old) => ({ ...old, ...change }));
  return (
    <Board
      {...{ props, marking, keysShown, showKeys }}
      full={shown.full}
      onLeaveFull={() => onView({ full: false })}
    >
      <Easel
        {...{ easel, marks, listeners }}
        look={shown.look}
        words={easelWords(props, marking)}
        onKeyDown={onKeyDown}
        draft={drafted}
        loupe={loupe && { ...loupe, photo: loupeCentre(loupe.photo, draft) }}
      >
        <p className="visually-hidden" role="status" aria-live="polite" data-testid="canvas-said">
          {marking.said}
        </p>
        <ViewBar
          view={shown}
          hasMarks={history.present.marks.length > 0}
          onView={onView}
          onKeys={() => showKeys(true)}
        />
        {!readOnly && (
          <DraftBar
            {...{ marking, picked }}
            drawing={history.present}
            size={shapeOfDraft(draft, props.shapeLabel, marking.follow.shown)}
            asked={props.asked ?? null}
            touching={loupe !== null}
          />
        )}
        <ShapeNamer
          {...{ marking, easel }}
          {...(props.offer ? { offer: props.offer } : {})}
          process={props.process ?? null}
        />
      </Easel>
    </Board>
  );
}

/** What is on the board and what hands and keys do to it. */
function useBoard(props: BeadCanvasProps, easel: EaselState, marking: Marking, tags: TagLevel) {
  const { photo, history, selectedId, readOnly = false } = props;
  const { unitPx } = easel;
  const { tool, draft, preview } = marking;
  const { shapes, marks, inHand } = useScene(props, marking, unitPx, tags);
  const handles = readOnly
    ? []
    : handlesOf(preview, tool, selectedId, unitPx, photo.widthPx, sectionInHand(props, marking));
  const picked = usePickedPoint(handles, marking);
  const { follow } = marking;
  const follows = follow.on;
  const drawing = history.present;
  const suggested = props.suggested ?? null;
  const scenery: Scenery = {
    ...{ tool, draft, drawing, shapes, handles, selectedId, unitPx, follows, suggested },
  };
  useFollowedEdges(marking, easel);
  const { cross, hideCross, onKeyDown } = useKeys({ marking, scenery, picked, easel, readOnly });
  const { loupe, listeners } = useHands(easel, marking, scenery, picked, hideCross);
  const drafted = [
    ...(suggested ? suggestedPicture(suggested, unitPx) : []),
    ...inHand,
    ...draftPicture(draft, unitPx, follow.shown),
    ...handlePicture(handles, picked.handle?.key ?? null, unitPx),
    ...(cross ? crossPicture(cross, unitPx) : []),
  ];
  return { marks, drafted, picked, loupe, listeners, onKeyDown };
}

const easelWords = ({ history }: BeadCanvasProps, { tool, draft, offered }: Marking) => ({
  testId: "bead-canvas",
  name: "Photo of the bead",
  kind: "marking canvas",
  keyHelp: keyHelp(offered),
  failed: "The photo did not load. Check the connection, then open this bead again; your marks are kept.",
  data: {
    "data-tool": tool,
    "data-marks": history.present.marks.length,
    "data-draft": draft?.kind ?? "none",
    "data-draft-points": draft?.kind === "path" ? wholePath(draft).length : 0,
  },
});

/** The section with the drag under way, so that what the hand holds moves with it. */
function sectionInHand({ section }: BeadCanvasProps, { sectionPreview }: Marking) {
  return section && sectionPreview ? { section: sectionPreview, places: section.places } : null;
}

/** Undo and redo from wherever no field has the focus, and the list of keys; and what takes a step by a key of the board's own. */
function useStepKeys(marking: Marking, readOnly: boolean, onList: () => void) {
  const stepBy = (event: Pick<KeyboardEvent, "preventDefault"> & Parameters<typeof undoCommand>[0]) => {
    const step = readOnly ? null : undoCommand(event);
    if (step === null) return;
    event.preventDefault();
    marking[step]();
  };
  useWindowKeys((event) => {
    if (event.key === "?") onList();
    else stepBy(event);
  });
  return stepBy;
}

/** Tools and canvas side by side; undo and redo answer to the keys in both. */
function Board({
  props,
  marking,
  full,
  onLeaveFull,
  keysShown,
  showKeys,
  children,
}: {
  props: BeadCanvasProps;
  marking: Marking;
  /** Over the whole window. */
  full: boolean;
  onLeaveFull: () => void;
  keysShown: boolean;
  showKeys: (shown: boolean) => void;
  children: ReactNode;
}) {
  const { history, readOnly = false } = props;
  const { past, present, future } = history;
  const stepBy = useStepKeys(marking, readOnly, () => showKeys(true));
  const here = useLater(overPhoto);
  const onKeyDown = (event: KeyboardEvent) => {
    // Escape gives up what is drawn or picked first.
    if (full && event.key === "Escape" && marking.draft === null && props.selectedId === null) onLeaveFull();
    stepBy(event);
  };
  return (
    <div className={styles.board} data-full={full || undefined} onKeyDown={onKeyDown}>
      {!readOnly && (
        <ToolBar
          tool={marking.tool}
          onToolChange={marking.changeTool}
          canUndo={past.length > 0 || marking.draft?.kind === "path"}
          canRedo={future.length > 0}
          onUndo={marking.undo}
          onRedo={marking.redo}
          offered={marking.offered}
          missing={toolsMissing(present, props.section?.section ?? null)}
        />
      )}
      <div className={styles.window}>{children}</div>
      {here && <here.KeyList open={keysShown} offered={marking.offered} onOpen={showKeys} />}
    </div>
  );
}
