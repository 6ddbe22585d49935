import type { BeadContent, BeadJudgement, PhotoFacts, PhotoRole } from "@/lib/assess";
import { emptyDrawing, reduce, startHistory, type Action, type Drawing, type History } from "@/lib/marks";
import type { RunSetup } from "@/lib/setup";

/** One photo on the workbench: what is fixed about it, and its drawing with its undo steps. */
export interface WorkPhoto extends PhotoFacts {
  readonly role: PhotoRole;
  readonly history: History;
}

/** What the workbench edits. Everything but the undo steps is what one save writes. */
export interface WorkState {
  readonly title: string;
  readonly welder: string | null;
  readonly setup: RunSetup;
  readonly judgement: BeadJudgement;
  readonly photos: readonly WorkPhoto[];
}

export type WorkAction =
  | { readonly type: "name"; readonly title?: string; readonly welder?: string | null }
  | { readonly type: "setup"; readonly setup: RunSetup }
  | { readonly type: "judgement"; readonly change: Partial<BeadJudgement> }
  | { readonly type: "draw"; readonly photoId: string; readonly action: Action }
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
    judgement: content.judgement,
    photos: photos.map((facts) =>
      workPhoto(facts, drawings.get(facts.id)?.role ?? "face", drawings.get(facts.id)?.drawing),
    ),
  };
}

function workPhoto(
  { id, sha256, widthPx, heightPx }: PhotoFacts,
  role: PhotoRole,
  drawing: Drawing = emptyDrawing,
): WorkPhoto {
  return { id, sha256, widthPx, heightPx, role, history: startHistory(drawing) };
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
      return { ...state, setup: action.setup };
    case "judgement":
      return { ...state, judgement: { ...state.judgement, ...action.change } };
    case "draw":
      return changePhoto(state, action.photoId, (photo) => {
        const history = reduce(photo.history, action.action);
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
    photos: state.photos.map(({ id, role, history }) => ({ id, role, drawing: history.present })),
  };
}
