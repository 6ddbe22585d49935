"use client";

import { useRef, useState } from "react";
import {
  BeadCanvas,
  markStyles,
  scaleFromPicks,
  sizesAsked,
  type Asked,
  type ScalePickKind,
  type Tool,
} from "@/components/canvas";
import { laterPart } from "@/components/ui";
import type { SectionAction } from "@/lib/assess";
import {
  reduce,
  startHistory,
  type EditAction,
  type Mark,
  type MarkShapeData,
  type PhotoPoint,
  type Scale,
  type Toes,
} from "@/lib/marks";
import { markLabel, scaleText } from "@/lib/report";
import { askedAbout } from "./asked";
import { BehindNote } from "./behind-note";
import { benchCode } from "./bench-code";
import type * as BenchLate from "./bench-late";
import { firstSize, photoUrl } from "./photo-url";
import styles from "./photo-section.module.css";
import type { ScalePicks } from "./scale-dialog";
import { SectionJobs } from "./section-jobs";
import type { EarlyProps } from "./shared";
import type { UnderPhotoProps } from "./under-photo";
import { useSpots, type Spots } from "./use-spots";
import { useFoundOn, withFound } from "./use-found";
import { usePickerOffer } from "./use-picker-offer";
import { useSectionDesk } from "./use-section-desk";
import type { WorkPhoto } from "./work-state";
import bench from "./workbench.module.css";

export interface BoardProps extends EarlyProps {
  readonly photo: WorkPhoto;
  readonly selectedId: string | null;
  readonly onSelect: (id: string | null) => void;
  readonly number: number | null;
}

/** With the style sheets of the marks: the server shows them before their code is here. */
const UnderPhoto = laterPart<typeof BenchLate, UnderPhotoProps>(
  benchCode,
  ({ UnderPhotoNow }) => UnderPhotoNow,
);
void markStyles;

/** One photo to mark on, and under it what is said of it. */
export function PhotoBoard(props: BoardProps) {
  const { photo, dispatch } = props;
  const board = useRef<HTMLDivElement>(null);
  // On a phone what was pressed lies below the photo, and the work goes on above.
  const show = () => board.current?.scrollIntoView({ block: "nearest" });
  const onAction = (action: EditAction) => dispatch({ type: "draw", photoId: photo.id, action });
  const onSection = (action: SectionAction) => dispatch({ type: "section", photoId: photo.id, action });
  const tools = useBoardTools(props, { onAction, onSection, show });
  const { desk, tool, setTool, picking } = tools;
  const url = photoUrl(photo, "view", props.kept);
  const { act, ...offered } = useOffered(photo, url, onAction, setTool);
  const offer = usePickerOffer(props.state, props.assessment);
  return (
    <>
      {photo.role === "section" && <SectionJobs job={desk.job} onJob={desk.setJob} />}
      <div className={styles.board} ref={board}>
        <PhotoCanvas
          {...{ ...props, ...offered, desk, picking, tool, offer }}
          asked={askedAbout(offered.found, offered.proposed, {
            onAction,
            onFound: offered.setFound,
            onProposed: offered.setProposed,
            onRim: (rim) => picking.ask({ kind: "disc", points: rim }),
          })}
          onAction={act}
          onToolChange={setTool}
        />
      </div>
      {props.isBehind && <BehindNote />}
      <div className={bench.under} data-behind={props.isBehind || undefined}>
        <UnderPhoto {...props} {...{ ...offered, ...tools, url, offer, onAction, onSection, show }} />
      </div>
    </>
  );
}

/** What is offered on this photo and counts for nothing yet: toes, and what was found without a press. */
function useOffered(
  photo: WorkPhoto,
  url: string,
  onAction: (action: EditAction) => void,
  setTool: (tool: Tool) => void,
) {
  const { proposed, setProposed, act } = useProposed(photo, onAction);
  const { found, setFound, actOrDrag } = useFoundOn(photo, url, act);
  // A tap with an empty hand takes what is suggested, so the hand is emptied when that is switched on.
  const spots = useSpots(photo, url, onAction, () => setTool("move"));
  return { proposed, setProposed, found, setFound, spots, act: actOrDrag };
}

/** The rings of what is suggested. */
function ringsOf({ shown, take }: Spots) {
  if (shown === null || shown.length === 0) return null;
  return { rings: shown.map(({ id, at, radiusPx }) => ({ id, at, radius: radiusPx })), onTake: take };
}

/** Toes read off this photo that nobody has accepted yet: seen on it, kept nowhere. */
function useProposed({ id, history }: WorkPhoto, onAction: (action: EditAction) => void) {
  const [held, setHeld] = useState<{ readonly id: string; readonly toes: Toes } | null>(null);
  const proposed = held?.id === id ? held.toes : null;
  const setProposed = (toes: Toes | null) => setHeld(toes && { id, toes });
  // What is proposed may be corrected before it is accepted, and is still nobody's until then.
  const act = (action: EditAction) =>
    proposed && action.type === "toes.movePoint"
      ? setProposed(reduce(startHistory({ ...history.present, toes: proposed }), action).present.toes ?? null)
      : onAction(action);
  return { proposed, setProposed, act };
}

/** The tool in hand, the section under work and the scale being picked. */
function useBoardTools({ photo, state, assessment }: BoardProps, { onAction, onSection, show }: Acts) {
  const [held, setTool] = useState<Tool>("move");
  const found = assessedPhoto(assessment, photo)?.section ?? null;
  const desk = useSectionDesk({ photo, joint: state.setup.joint, found, onSection, onTool: setTool });
  // Another photo may have come up, on which this tool is none.
  const tool = desk.offered.includes(held) ? held : "move";
  const setScale = (scale: Scale | null) => {
    if (scale) onAction({ type: "scale.set", scale });
    setTool(scale ? desk.toolAfterScale : "move");
    if (desk.work) show();
  };
  return { desk, tool, setTool, setScale, picking: useScalePicking(setScale) };
}

interface Acts {
  readonly onAction: (action: EditAction) => void;
  readonly onSection: (action: SectionAction) => void;
  /** Brings the photo into sight. */
  readonly show: () => void;
}

const assessedPhoto = ({ photos }: EarlyProps["assessment"], { id }: WorkPhoto) =>
  photos.find(({ photoId }) => photoId === id) ?? null;

type CanvasProps = BoardProps &
  Pick<ReturnType<typeof useBoardTools>, "desk" | "picking" | "tool"> &
  Pick<UnderPhotoProps, "proposed" | "found" | "offer" | "spots"> & {
    readonly asked: Asked | null;
    readonly onAction: (action: EditAction) => void;
    readonly onToolChange: (tool: Tool) => void;
  };

/** The canvas, told what this photo shows and in which words. */
function PhotoCanvas(props: CanvasProps) {
  const { photo, kept, state, assessment, units, number, desk, picking, proposed, found } = props;
  const said = assessedPhoto(assessment, photo);
  const sizes = new Map(said?.marks.map((one) => [one.id, one]));
  const drawing = withFound(photo.history.present, found);
  const shown = proposed ? { ...drawing, toes: proposed } : drawing;
  return (
    <BeadCanvas
      photo={{
        viewUrl: photoUrl(photo, "view", kept),
        smallUrl: photoUrl(photo, firstSize(photo), kept),
        widthPx: photo.widthPx,
        heightPx: photo.heightPx,
        name: `Photo ${state.photos.indexOf(photo) + 1} of ${number === null ? "a new bead" : `bead ${number}`}`,
      }}
      history={shown === photo.history.present ? photo.history : { ...photo.history, present: shown }}
      {...handed(props)}
      offered={desk.offered}
      section={desk.work}
      sizeLabel={(mark: Mark) => markLabel(mark, sizes.get(mark.id) ?? null, units)}
      shapeLabel={(shape: MarkShapeData) =>
        benchCode.now()?.shapeSize(drawing, shape, said?.calibration ?? null, units) ?? ""
      }
      scaleLabel={
        found?.rim && photo.history.present.scale === null ? "Round disc" : scaleText(drawing.scale, units)
      }
      scaleKind={picking.kind}
      onScalePicked={picking.onPicked}
      onScaleCancelled={picking.drop}
      process={state.setup.process}
    />
  );
}

const handed = (props: CanvasProps) => {
  const { selectedId, onSelect, onAction, tool, onToolChange, offer, asked, proposed, spots } = props;
  const suggested = proposed === null ? ringsOf(spots) : null;
  return { selectedId, onSelect, onAction, tool, onToolChange, offer, asked, suggested };
};

/** From picked points to a scale: at once where the sizes are known, else after they have been asked for. */
function useScalePicking(setScale: (scale: Scale | null) => void) {
  const [kind, setKind] = useState<ScalePickKind>("two-points");
  const [picks, setPicks] = useState<ScalePicks | null>(null);
  return {
    kind,
    setKind,
    picks,
    ask: setPicks,
    drop: () => setPicks(null),
    onPicked: (points: readonly PhotoPoint[]) => {
      if (sizesAsked[kind] === 0) setScale(scaleFromPicks(kind, points, []));
      else setPicks({ kind, points });
    },
    onSizes: (sizesMm: readonly number[]) => {
      if (!picks) return;
      setPicks(null);
      setScale(scaleFromPicks(picks.kind, picks.points, sizesMm));
    },
  };
}
