import { sendPhoto } from "@/components/saving";
import type { PhotoRole } from "@/lib/assess";
import type { Answer, Line } from "@/lib/base";

export interface UploadedPhoto {
  readonly id: string;
  readonly sha256: string;
  readonly role: PhotoRole;
  readonly format: string;
  readonly bytes: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

export interface Uploaded {
  readonly photo: UploadedPhoto;
  /** Numbers of the other beads that carry the same photo. */
  readonly alsoOn: readonly number[];
  readonly notices: readonly string[];
}

/** Puts one photo on a bead. Never rejects. */
export function uploadPhoto(
  beadId: string,
  photo: File,
  role: PhotoRole,
  onProgress: (share: number) => void,
): Promise<Answer<Uploaded>> {
  return sendPhoto({
    to: `/api/beads/${beadId}/photos?role=${role}`,
    photo,
    onProgress,
    read: readUploaded,
    words: {
      brokeOff: "The connection broke off, so nothing was stored. Try this photo again.",
      refused: "The photo could not be taken in. Try again; if it happens again, try another photo.",
    },
  });
}

function readUploaded(body: Record<string, unknown>): Uploaded | null {
  const {
    photo,
    alsoOn = [],
    notices = [],
  } = body as Omit<Partial<Uploaded>, "notices"> & {
    notices?: readonly Line[];
  };
  return photo ? { photo, alsoOn, notices: notices.map(({ message }) => message) } : null;
}
