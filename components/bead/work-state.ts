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
  /** Set-ups before the present one, the last on top. */
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
      return { ...state, setup: action.setup, setupsBefore: setupsBefore(state, action.setup) };
    case "setup.undo":
      return undoSetup(state);
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
      return { ...state, photos: [...state.photos, workPhoto(action.photo, action.photo.role)] };
    case "photo.remove":
      return { ...state, photos: state.photos.filter((photo) => photo.id !== action.photoId) };
    case "photo.role":
      return changePhoto(state, action.photoId, (photo) => ({ ...photo, role: action.role }));
    case "replace":
      return action.state;
  }
}

/** So many set-ups can be gone back to. */
const MOST_SETUPS = 50;

/** What is typed into one field is one step back, however many letters it took; everything else is one of its own. */
function setupsBefore({ setup, setupsBefore: before }: WorkState, next: RunSetup): readonly RunSetup[] {
  const changed = changedFields(setup, next);
  if (changed.length === 0) return before;
  const last = before.at(-1);
  const isTyping = changed.length === 1 && typeof (next[changed[0]!] ?? setup[changed[0]!]) === "number";
  const goesOn = isTyping && last !== undefined && changedFields(last, setup).join() === changed[0];
  return goesOn ? before : [...before, setup].slice(-MOST_SETUPS);
}

const changedFields = (a: RunSetup, b: RunSetup): readonly (keyof RunSetup)[] =>
  (Object.keys(b) as (keyof RunSetup)[]).filter((key) => a[key] !== b[key]);

function undoSetup(state: WorkState): WorkState {
  const last = state.setupsBefore.at(-1);
  return last === undefined
    ? state
    : { ...state, setup: last, setupsBefore: state.setupsBefore.slice(0, -1) };
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

function changePhoto(state: WorkState, id: string, change: (photo: WorkPhoto) => WorkPhoto): WorkState {
  const photos = state.photos.map((photo) => (photo.id === id ? change(photo) : photo));
  return photos.some((photo, index) => photo !== state.photos[index]) ? { ...state, photos } : state;
}

/** What a save sends: the state without its undo steps. */
export function toContent(state: WorkState): BeadContent {
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
