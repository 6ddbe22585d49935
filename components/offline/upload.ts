import { sendPhoto } from "@/components/saving";
import type { PhotoRole } from "@/lib/assess";
import type { Answer, Line } from "@/lib/base";

interface UploadedPhoto {
  readonly id: string;
  readonly sha256: string;
  readonly role: PhotoRole;
  readonly format: string;
  readonly bytes: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

interface Uploaded {
  readonly photo: UploadedPhoto;
  /** Numbers of the other beads that carry the same photo. */
  readonly alsoOn: readonly number[];
  readonly notices: readonly string[];
}

/** Puts one photo on a bead under the id it has on this device; sent twice it is there once. Never rejects. */
export function uploadPhoto(
  beadId: string,
  photoId: string,
  photo: File,
  role: PhotoRole,
  onProgress: (share: number) => void,
): Promise<Answer<Uploaded>> {
  return sendPhoto({
    to: `/api/beads/${beadId}/photos?role=${role}&id=${photoId}`,
    photo,
    onProgress,
    read: readUploaded,
    words: {
      brokeOff: "The connection broke off. The photo is kept on this device and sent again by itself.",
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
