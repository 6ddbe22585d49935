import type { Revision, Saved } from "@/components/saving";
import type { BeadContent, PhotoFacts, PhotoRole } from "@/lib/assess";
import type { KeeperState } from "./bead-keeper";
import type { KeptPhoto } from "./kept";

/** What the screen has to do when something becomes known. */
export interface ScreenNews {
  /** Show this instead of what the page brought: a gone window's work. */
  readonly onTakenUp: (content: BeadContent, photos: readonly PhotoFacts[]) => void;
  readonly onMade: (bead: { readonly number: number; readonly title: string }) => void;
  /** A photo to show and mark that waits on this device. */
  readonly onPhoto: (photo: PhotoFacts & { readonly role: PhotoRole }) => void;
  /** Toeline has it now, and this is what it says of it. */
  readonly onPhotoTaken: (photo: PhotoFacts & { readonly role: PhotoRole }) => void;
  /** True where the screen let go of it; else it stays with what was drawn on it. */
  readonly onPhotoRefused: (photoId: string) => boolean;
}

export interface KeptBeadSaving extends KeeperState {
  /** Address of what this device can show of a photo; null: nothing, or not read yet. */
  readonly urlOf: (photoId: string) => string | null;
  readonly save: Revision<Saved>;
  /** How much of this bead only this device has. */
  readonly unsent: { readonly changes: boolean; readonly photos: number; readonly count: number };
  /** The same as of this moment, for a press: what was done just now may not be on the screen yet. */
  readonly countUnsent: () => KeptBeadSaving["unsent"];
  /** Which photo is on its way, and which part of it has gone out. */
  readonly sending: { readonly id: string; readonly share: number } | null;
  /** What was said of photos, in sentences, the last round of them. */
  readonly said: readonly string[];
  readonly addPhotos: (files: readonly File[], role: PhotoRole) => Promise<void>;
  readonly dropPhoto: (photo: KeptPhoto) => Promise<void>;
}
