import type { CanvasPhoto } from "@/components/canvas-kit";
import type { PhotoSection, SectionAction } from "@/lib/assess";
import type { DrawingAction, EditAction, History, Mark, MarkShapeData, PhotoPoint } from "@/lib/marks";
import type { ImperfectionId, Joint, Position, Process } from "@/lib/trade";
import type { MeasuredMark } from "@/lib/measure";
import type { UnitPreferences } from "@/lib/units";
import type { NamedSpot } from "./use-picker-place";
import type { SectionEdgeRole, SectionPlaces } from "@/lib/section";
import type { PickerOffer } from "./picker-groups";
import type { ScalePickKind } from "./scale-picks";
import type { Suggested } from "./suggested";

export const tools = [
  "move",
  "point",
  "line",
  "outline",
  "metal",
  "edge",
  "root",
  "scale",
  "weld-line",
] as const;
export type Tool = (typeof tools)[number];

/** What marks a photo of a weld, and what measures one of a cut weld. */
export const markTools: readonly Tool[] = ["move", "point", "line", "outline", "scale", "weld-line"];
export const sectionTools: readonly Tool[] = ["move", "metal", "edge", "root", "scale"];
/** Imperfections inside a cut weld: it has no length to follow. */
export const sectionMarkTools: readonly Tool[] = ["move", "point", "line", "outline", "scale"];

/** One gesture's change, to the marks and the scale or to the section. */
export type CanvasChange = DrawingAction | SectionAction;

/** A cut and etched weld, worked on over its photo. */
export interface SectionWork {
  readonly section: PhotoSection;
  /** What was found on it; null while nothing is. */
  readonly places: SectionPlaces | null;
  /** The edge that the edge tool draws. */
  readonly role: SectionEdgeRole;
  /** One finished gesture. Feed it to `editSection`. */
  readonly onAction: (action: SectionAction) => void;
}

/** What is asked of the person about the whole photo: a few words, and the answers as large buttons. */
export interface Asked {
  readonly words: string;
  readonly answers: readonly AskedAnswer[];
}

export interface AskedAnswer {
  readonly label: string;
  readonly isMain?: boolean;
  /** Not to be given yet. */
  readonly isOff?: boolean;
  readonly onPress: () => void;
}

export interface BeadCanvasProps {
  readonly photo: CanvasPhoto;
  readonly history: History;
  /** One finished gesture, undo or redo. Feed it to `reduce`. */
  readonly onAction: (action: EditAction) => void;
  readonly selectedId: string | null;
  readonly onSelect: (id: string | null) => void;
  readonly tool: Tool;
  readonly onToolChange: (tool: Tool) => void;
  /** Those in the bar; `markTools` when left out. */
  readonly offered?: readonly Tool[];
  /** Of a photo of a cut weld. */
  readonly section?: SectionWork | null;
  /** Words beside the mark's number, for example "Undercut 12 mm". Empty: the number stands alone. */
  readonly sizeLabel: (mark: Mark) => string;
  /** Size of a shape still being drawn, for example "12.4 mm". Left out: nothing is shown. */
  readonly shapeLabel?: (shape: MarkShapeData) => string;
  /** Words at the scale bar, for example "25 mm". */
  readonly scaleLabel?: string;
  /** What the scale tool picks; two points when left out. */
  readonly scaleKind?: ScalePickKind;
  /** The scale object was picked. Ask for its size, then send `scale.set`. */
  readonly onScalePicked: (points: readonly PhotoPoint[]) => void;
  /** The picked ends were given up (Escape, another tool). */
  readonly onScaleCancelled?: () => void;
  /** Stands on the photo, in reach of the thumb, while nothing is being drawn. */
  readonly asked?: Asked | null;
  /** Places that are suggested to be marked: rings to tap, none of them a mark. */
  readonly suggested?: Suggested | null;
  /** Offered first in the picker. */
  readonly offer?: PickerOffer;
  /** For what the picker tells of causes. */
  readonly process?: Process | null;
  /** Look only: pan, zoom and select, no tools. */
  readonly readOnly?: boolean;
}

export interface ToolBarProps {
  readonly tool: Tool;
  readonly offered: readonly Tool[];
  /** Tools whose job is not done yet. */
  readonly missing: ReadonlySet<Tool>;
  readonly onToolChange: (tool: Tool) => void;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  readonly onUndo: () => void;
  readonly onRedo: () => void;
}

export interface ImperfectionPickerProps {
  readonly open: boolean;
  readonly onOpenChange: (open: boolean) => void;
  /** What is named now, if anything. */
  readonly current: ImperfectionId | null;
  readonly onPick: (imperfection: ImperfectionId) => void;
  readonly title?: string;
  /** What is likeliest here; left out: nothing is known. */
  readonly offer?: PickerOffer | undefined;
  readonly process?: Process | null | undefined;
  /** What is being named, on the screen: the picker keeps beside it. */
  readonly spot?: NamedSpot | null;
  /** Imperfections whose usual shape is this one come first within their group. */
  readonly shape?: MarkShapeData["kind"];
  /** Offered as "the same for the next ones": called with the picked name when that was ticked. */
  readonly onRepeat?: (imperfection: ImperfectionId) => void;
  /** Puts the focus where the work goes on; left out, it returns to what opened the picker. */
  readonly onClosed?: () => void;
}

export interface MarkCardProps {
  readonly mark: Mark;
  /** 1..n, as on the photo. */
  readonly number: number;
  readonly onAction: (action: EditAction) => void;
  readonly joint?: Joint | null;
  readonly position?: Position | null;
  /** What a bare number typed for a gauge reading means; millimetres when left out. */
  readonly units?: UnitPreferences;
  /** The mark's size in words, or why there is none ("no scale"). */
  readonly size?: string;
  /** Its sizes with the parts of their uncertainties, shown on request. */
  readonly measured?: MeasuredMark | null;
  readonly offer?: PickerOffer;
  readonly process?: Process | null;
  readonly onClose?: () => void;
  readonly readOnly?: boolean;
}
