"use client";

import { useRef, useState } from "react";
import {
  BeadCanvas,
  scaleFromPicks,
  sizesAsked,
  type Asked,
  type ScalePickKind,
  type Tool,
} from "@/components/canvas";
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
import type { MeasuredMark } from "@/lib/measure";
import { markLabel, scaleText } from "@/lib/report";
import { askedAbout } from "./asked";
import { FoundPanel } from "./found-panel";
import { photoUrl } from "./photo-url";
import styles from "./photo-section.module.css";
import { ScaleDialog, type ScalePicks } from "./scale-dialog";
import { ScalePanel } from "./scale-panel";
import { SmallPhotoNote } from "./small-photo-note";
import { shapeSize } from "./shape-size";
import { usePickerOffer } from "./use-picker-offer";
import { SectionJobs, SectionSteps } from "./section-steps";
import type { BenchProps } from "./shared";
import { TracePanel } from "./trace-panel";
import { useFoundOn, withFound, type Found } from "./use-found";
import { useSectionDesk } from "./use-section-desk";
import type { WorkPhoto } from "./work-state";

interface BoardProps extends Pick<BenchProps, "kept" | "state" | "assessment" | "units"> {
  readonly photo: WorkPhoto;
  /** Of its marks, by id. */
  readonly sizes: ReadonlyMap<string, MeasuredMark>;
  readonly selectedId: string | null;
  readonly onSelect: (id: string | null) => void;
  readonly onAction: (action: EditAction) => void;
  readonly onSection: (action: SectionAction) => void;
  readonly number: number | null;
}

/** One photo to mark on, and under it its scale: picked by hand, read off a strip, or taken away. */
export function PhotoBoard(props: BoardProps) {
  const { photo, onAction, onSection, units } = props;
  const board = useRef<HTMLDivElement>(null);
  // On a phone what was pressed lies below the photo, and the work goes on above.
  const show = () => board.current?.scrollIntoView({ block: "nearest" });
  const { calibration, desk, tool, setTool, setScale, picking } = useBoardTools(props, show);
  const drawing = photo.history.present;
  const url = photoUrl(photo, "view", props.kept);
  const { proposed, setProposed, found, setFound, act } = useOffered(photo, url, onAction);
  return (
    <>
      {photo.role === "section" && <SectionJobs job={desk.job} onJob={desk.setJob} />}
      <div className={styles.board} ref={board}>
        <PhotoCanvas
          {...{ ...props, calibration, desk, picking, tool, proposed, found }}
          asked={askedAbout(found, proposed, {
            onAction,
            onFound: setFound,
            onProposed: setProposed,
            onRim: (rim) => picking.ask({ kind: "disc", points: rim }),
          })}
          onAction={act}
          onToolChange={setTool}
        />
      </div>
      {found && <FoundPanel found={found} onFound={setFound} />}
      {photo.role === "section" && desk.job === "section" && (
        <SectionSteps
          section={desk.section}
          hasScale={drawing.scale !== null}
          tool={tool}
          role={desk.role}
          onJoint={(joint) => onSection({ type: "section.joint", joint })}
          onTake={(step) => {
            desk.take(step);
            show();
          }}
        />
      )}
      <SmallPhotoNote photo={photo} />
      <ScalePanel
        scale={drawing.scale}
        {...{ calibration, units }}
        photo={{ url, widthPx: photo.widthPx }}
        picking={tool === "scale"}
        kind={picking.kind}
        onKind={(kind) => {
          picking.setKind(kind);
          show();
        }}
        onRemove={() => onAction({ type: "scale.clear" })}
        onFound={setScale}
        onCorrected={(scale) => onAction({ type: "scale.set", scale })}
      />
      {photo.role === "face" && (
        <TracePanel
          {...{ photo, url, calibration, units, proposed, onAction }}
          setup={props.state.setup}
          onProposed={setProposed}
        />
      )}
      <ScaleDialog picks={picking.picks} units={units} onClose={picking.drop} onSizes={picking.onSizes} />
    </>
  );
}

/** What is offered on this photo and counts for nothing yet: toes, and what was found without a press. */
function useOffered(photo: WorkPhoto, url: string, onAction: BoardProps["onAction"]) {
  const { proposed, setProposed, act } = useProposed(photo, onAction);
  const { found, setFound, actOrDrag } = useFoundOn(photo, url, act);
  return { proposed, setProposed, found, setFound, act: actOrDrag };
}

/** Toes read off this photo that nobody has accepted yet: seen on it, kept nowhere. */
function useProposed({ id, history }: WorkPhoto, onAction: BoardProps["onAction"]) {
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
function useBoardTools({ photo, state, assessment, onAction, onSection }: BoardProps, show: () => void) {
  const [held, setTool] = useState<Tool>("move");
  const said = assessment.photos.find(({ photoId }) => photoId === photo.id);
  const found = said?.section ?? null;
  const desk = useSectionDesk({ photo, joint: state.setup.joint, found, onSection, onTool: setTool });
  // Another photo may have come up, on which this tool is none.
  const tool = desk.offered.includes(held) ? held : "move";
  const setScale = (scale: Scale | null) => {
    if (scale) onAction({ type: "scale.set", scale });
    setTool(scale ? desk.toolAfterScale : "move");
    if (desk.work) show();
  };
  return {
    desk,
    tool,
    setTool,
    setScale,
    calibration: said?.calibration ?? null,
    picking: useScalePicking(setScale),
  };
}

/** The canvas, told what this photo shows and in which words. */
function PhotoCanvas({
  photo,
  sizes,
  selectedId,
  onSelect,
  onAction,
  kept,
  state,
  assessment,
  units,
  number,
  calibration,
  desk,
  picking,
  tool,
  proposed,
  found,
  asked,
  onToolChange,
}: BoardProps & {
  calibration: ReturnType<typeof useBoardTools>["calibration"];
  desk: ReturnType<typeof useSectionDesk>;
  picking: ReturnType<typeof useScalePicking>;
  tool: Tool;
  proposed: Toes | null;
  found: Found | null;
  asked: Asked | null;
  onToolChange: (tool: Tool) => void;
}) {
  const drawing = withFound(photo.history.present, found);
  const shown = proposed ? { ...drawing, toes: proposed } : drawing;
  return (
    <BeadCanvas
      photo={{
        viewUrl: photoUrl(photo, "view", kept),
        smallUrl: photoUrl(photo, "small", kept),
        widthPx: photo.widthPx,
        heightPx: photo.heightPx,
        name: `Photo ${state.photos.indexOf(photo) + 1} of ${number === null ? "a new bead" : `bead ${number}`}`,
      }}
      history={shown === photo.history.present ? photo.history : { ...photo.history, present: shown }}
      {...{ selectedId, onSelect, onAction, tool, onToolChange }}
      offered={desk.offered}
      section={desk.work}
      sizeLabel={(mark: Mark) => markLabel(mark, sizes.get(mark.id) ?? null, units)}
      shapeLabel={(shape: MarkShapeData) => shapeSize(drawing, shape, calibration, units)}
      scaleLabel={
        found?.rim && photo.history.present.scale === null ? "Round disc" : scaleText(drawing.scale, units)
      }
      scaleKind={picking.kind}
      onScalePicked={picking.onPicked}
      onScaleCancelled={picking.drop}
      asked={asked}
      offer={usePickerOffer(state, assessment)}
      process={state.setup.process}
    />
  );
}

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
