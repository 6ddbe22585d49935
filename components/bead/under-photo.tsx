"use client";

import { MarkCard, MarkList, type PickerOffer, type ScalePickKind, type Tool } from "@/components/canvas";
import type { SectionAction } from "@/lib/assess";
import type { EditAction, Mark, Scale, Toes } from "@/lib/marks";
import { markAmountText } from "@/lib/report";
import { FoundPanel } from "./found-panel";
import { ScaleDialog, type ScalePicks } from "./scale-dialog";
import { ScalePanel } from "./scale-panel";
import { SectionSteps } from "./section-steps";
import type { EarlyProps } from "./shared";
import { SmallPhotoNote } from "./small-photo-note";
import { TracePanel } from "./trace-panel";
import type { Found } from "./found";
import { useFull } from "./use-full";
import type { SectionDesk } from "./use-section-desk";
import type { Spots } from "./use-spots";
import type { WorkPhoto } from "./work-state";

export interface UnderPhotoProps extends EarlyProps {
  readonly photo: WorkPhoto;
  /** Its largest picture. */
  readonly url: string;
  readonly selectedId: string | null;
  readonly onSelect: (id: string | null) => void;
  readonly onAction: (action: EditAction) => void;
  readonly onSection: (action: SectionAction) => void;
  readonly desk: SectionDesk;
  readonly tool: Tool;
  readonly setScale: (scale: Scale | null) => void;
  readonly picking: {
    readonly kind: ScalePickKind;
    readonly setKind: (kind: ScalePickKind) => void;
    readonly picks: ScalePicks | null;
    readonly ask: (picks: ScalePicks) => void;
    readonly drop: () => void;
    readonly onSizes: (sizesMm: readonly number[]) => void;
  };
  readonly proposed: Toes | null;
  readonly setProposed: (toes: Toes | null) => void;
  readonly found: Found | null;
  readonly setFound: (found: Found | null) => void;
  readonly spots: Spots;
  readonly offer: PickerOffer;
  /** Brings the photo into sight. */
  readonly show: () => void;
}

/**
 * Under the photo: what was found on it, its scale (picked by hand, read off a strip, or taken away), its toes, the marks on
 * it as a list, and all that is said about the one picked.
 */
export function UnderPhotoNow(props: UnderPhotoProps) {
  const { photo, url, units, state, found, setFound, onAction, picking } = props;
  const said = useFull(props).photos.find(({ photoId }) => photoId === photo.id);
  const calibration = said?.calibration ?? null;
  return (
    <>
      {found && <FoundPanel found={found} onFound={setFound} />}
      <Section {...props} />
      <SmallPhotoNote photo={photo} />
      <PhotoScale {...props} calibration={calibration} />
      {photo.role === "face" && (
        <TracePanel
          {...{ photo, url, calibration, units, onAction }}
          proposed={props.proposed}
          spots={props.spots}
          setup={state.setup}
          onProposed={props.setProposed}
        />
      )}
      <ScaleDialog picks={picking.picks} units={units} onClose={picking.drop} onSizes={picking.onSizes} />
      <Marks {...props} measured={said?.marks ?? []} />
    </>
  );
}

function Section({ photo, desk, tool, show, onSection }: UnderPhotoProps) {
  if (photo.role !== "section" || desk.job !== "section") return null;
  return (
    <SectionSteps
      section={desk.section}
      hasScale={photo.history.present.scale !== null}
      tool={tool}
      role={desk.role}
      onJoint={(joint) => onSection({ type: "section.joint", joint })}
      onTake={(step) => {
        desk.take(step);
        show();
      }}
    />
  );
}

function PhotoScale({
  photo,
  url,
  units,
  tool,
  picking,
  show,
  onAction,
  setScale,
  calibration,
}: UnderPhotoProps & Pick<Parameters<typeof ScalePanel>[0], "calibration">) {
  return (
    <ScalePanel
      scale={photo.history.present.scale}
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
  );
}

/** The marks on this photo as a list, and the card of the one picked. */
function Marks({
  photo,
  state,
  units,
  measured,
  selectedId,
  onSelect,
  onAction,
  offer,
}: UnderPhotoProps & { readonly measured: Measured }) {
  const { marks } = photo.history.present;
  const sizes = new Map(measured.map((one) => [one.id, one]));
  const sizeOf = (mark: Mark) => markAmountText(mark, sizes.get(mark.id) ?? null, units);
  const selected = marks.findIndex((mark) => mark.id === selectedId);
  const mark = marks[selected];
  return (
    <>
      <MarkList {...{ marks, sizeOf, selectedId, onSelect }} onAction={onAction} />
      {mark && (
        <MarkCard
          mark={mark}
          number={selected + 1}
          onAction={onAction}
          joint={state.setup.joint}
          position={state.setup.position}
          size={sizeOf(mark) || "no size yet"}
          measured={sizes.get(mark.id) ?? null}
          offer={offer}
          process={state.setup.process}
          units={units}
          onClose={() => onSelect(null)}
        />
      )}
    </>
  );
}

type Measured = ReturnType<typeof useFull>["photos"][number]["marks"];
