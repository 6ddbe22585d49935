import {
  editSection,
  emptyPhotoSection,
  sectionOf,
  type BeadContent,
  type BeadJudgement,
  type PhotoFacts,
  type PhotoRole,
  type PhotoSection,
  type SectionAction,
} from "@/lib/assess";
import {
  advance,
  emptyDrawing,
  reduce,
  startHistory,
  type Drawing,
  type EditAction,
  type History,
} from "@/lib/marks";
import type { RunSetup } from "@/lib/setup";
import { changeSetup, undoSetup } from "./setup-undo";

/** One photo on the workbench: what is fixed about it, and its drawing with its undo steps. */
export interface WorkPhoto extends PhotoFacts {
  readonly role: PhotoRole;
  readonly history: History<WorkDrawing>;
}

/** Marks, scale and section of one photo: one line of undo steps for all three. Null: nobody has begun a section. */
export type WorkDrawing = Drawing & { readonly section: PhotoSection | null };

/** What the workbench edits. Everything but the undo steps is what one save writes. */
export interface WorkState {
  readonly title: string;
  readonly welder: string | null;
  readonly setup: RunSetup;
  /** Set-ups before this one, oldest first, for undoing. */
  readonly setupsBefore: readonly RunSetup[];
  readonly judgement: BeadJudgement;
  readonly photos: readonly WorkPhoto[];
}

export type WorkAction =
  | { readonly type: "name"; readonly title?: string; readonly welder?: string | null }
  | { readonly type: "setup"; readonly setup: RunSetup }
  | { readonly type: "setup.undo" }
  | { readonly type: "judgement"; readonly change: Partial<BeadJudgement> }
  | { readonly type: "draw"; readonly photoId: string; readonly action: EditAction }
  | { readonly type: "section"; readonly photoId: string; readonly action: SectionAction }
  | { readonly type: "photo.add"; readonly photo: PhotoFacts & { readonly role: PhotoRole } }
  /** A photo that was on this device alone is stored now. */
  | { readonly type: "photo.stored"; readonly photo: PhotoFacts & { readonly role: PhotoRole } }
  | { readonly type: "photo.remove"; readonly photoId: string }
  | { readonly type: "photo.role"; readonly photoId: string; readonly role: PhotoRole }
  | { readonly type: "replace"; readonly state: WorkState };

export function startWork(content: BeadContent, photos: readonly PhotoFacts[]): WorkState {
  const drawings = new Map(content.photos.map((photo) => [photo.id, photo]));
  return {
    title: content.title,
    welder: content.welder,
    setup: content.setup,
    setupsBefore: [],
    judgement: content.judgement,
    photos: photos.map((facts) =>
      workPhoto(facts, drawings.get(facts.id)?.role ?? "face", drawings.get(facts.id)),
    ),
  };
}

function workPhoto(
  { id, sha256, widthPx, heightPx }: PhotoFacts,
  role: PhotoRole,
  drawn: Partial<Pick<BeadContent["photos"][number], "drawing" | "section">> = {},
): WorkPhoto {
  const { drawing = emptyDrawing, section = null } = drawn;
  return { id, sha256, widthPx, heightPx, role, history: startHistory({ ...drawing, section }) };
}

/** Pure: the same state and action give the same state, and an action that changes nothing gives the same object. */
export function work(state: WorkState, action: WorkAction): WorkState {
  switch (action.type) {
    case "name":
      return {
        ...state,
        title: action.title ?? state.title,
        welder: action.welder === undefined ? state.welder : action.welder,
      };
    case "setup":
      return { ...state, ...changeSetup(state, action.setup) };
    case "setup.undo":
      return { ...state, ...undoSetup(state) };
    case "judgement":
      return { ...state, judgement: { ...state.judgement, ...action.change } };
    case "draw":
      return changePhoto(state, action.photoId, (photo) => {
        const history = reduce(photo.history, action.action);
        return history === photo.history ? photo : { ...photo, history };
      });
    case "section":
      return changePhoto(state, action.photoId, (photo) => {
        const history = workSection(photo, state.setup.joint, action.action);
        return history === photo.history ? photo : { ...photo, history };
      });
    case "photo.add":
      return withPhoto(state, action.photo);
    case "photo.stored":
      return storedPhoto(state, action.photo);
    case "photo.remove":
      return { ...state, photos: state.photos.filter((photo) => photo.id !== action.photoId) };
    case "photo.role":
      return changePhoto(state, action.photoId, (photo) => ({ ...photo, role: action.role }));
    case "replace":
      return action.state;
  }
}

/** A section begins with its first point, or when somebody says which joint was cut. */
function workSection(
  { role, history }: WorkPhoto,
  joint: RunSetup["joint"],
  action: SectionAction,
): WorkPhoto["history"] {
  const { present } = history;
  const begun = sectionOf({ role, section: present.section ?? undefined }, joint);
  const from = begun ?? (action.type === "section.joint" ? emptyPhotoSection(action.joint) : null);
  if (from === null) return history;
  const section = editSection(from, action);
  const isNew = present.section === null && action.type === "section.joint";
  return section === from && !isNew ? history : advance(history, { ...present, section });
}

function withPhoto(state: WorkState, photo: PhotoFacts & { readonly role: PhotoRole }): WorkState {
  return { ...state, photos: [...state.photos, workPhoto(photo, photo.role)] };
}

/** What was drawn on it meanwhile, and what it was said to show, stays. */
function storedPhoto(state: WorkState, photo: PhotoFacts & { readonly role: PhotoRole }): WorkState {
  const { id, sha256, widthPx, heightPx } = photo;
  if (!state.photos.some((one) => one.id === id)) return withPhoto(state, photo);
  return changePhoto(state, id, (one) => ({ ...one, sha256, widthPx, heightPx }));
}

function changePhoto(state: WorkState, id: string, change: (photo: WorkPhoto) => WorkPhoto): WorkState {
  const photos = state.photos.map((photo) => (photo.id === id ? change(photo) : photo));
  return photos.some((photo, index) => photo !== state.photos[index]) ? { ...state, photos } : state;
}

const contents = new WeakMap<WorkState, BeadContent>();

/** What a save sends: the state without its undo steps. The same object for the same state, so that what is known of it stays known. */
export function toContent(state: WorkState): BeadContent {
  const before = contents.get(state);
  if (before) return before;
  const content = contentOf(state);
  contents.set(state, content);
  return content;
}

function contentOf(state: WorkState): BeadContent {
  return {
    title: state.title.trim() || "Untitled bead",
    welder: state.welder?.trim() || null,
    setup: state.setup,
    judgement: state.judgement,
    photos: state.photos.map(({ id, role, history }) => {
      const { section, ...drawing } = history.present;
      return { id, role, drawing, ...(section ? { section } : {}) };
    }),
  };
}
