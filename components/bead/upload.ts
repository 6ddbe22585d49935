import type { PhotoRole } from "@/lib/assess";

export interface UploadedPhoto {
  readonly id: string;
  readonly sha256: string;
  readonly role: PhotoRole;
  readonly format: string;
  readonly bytes: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

export type UploadAnswer =
  | {
      readonly ok: true;
      readonly photo: UploadedPhoto;
      readonly alsoOn: readonly number[];
      readonly notices: readonly string[];
    }
  | { readonly ok: false; readonly message: string };

const MAX_BYTES = 40 * 1024 * 1024;

/**
 * Sends one photo's bytes. XMLHttpRequest, because fetch cannot report how much has gone out.
 * Never rejects: a cut connection is an answer with a sentence.
 */
export function uploadPhoto(
  beadId: string,
  file: File,
  role: PhotoRole,
  onProgress: (share: number) => void,
): Promise<UploadAnswer> {
  if (file.size === 0)
    return Promise.resolve({ ok: false, message: "This file is empty. Take or choose the photo again." });
  if (file.size > MAX_BYTES) {
    const megabytes = (file.size / 1024 / 1024).toFixed(0);
    return Promise.resolve({
      ok: false,
      message: `This photo has ${megabytes} MB; up to 40 MB can be taken in. Send it at a smaller size.`,
    });
  }
  return new Promise((resolve) => {
    const request = new XMLHttpRequest();
    request.open("POST", `/api/beads/${beadId}/photos?role=${role}`);
    request.setRequestHeader("content-type", "application/octet-stream");
    request.responseType = "json";
    request.upload.onprogress = (event) =>
      onProgress(event.lengthComputable ? event.loaded / event.total : 0);
    request.onload = () => resolve(readAnswer(request.status, request.response));
    request.onerror = request.onabort = () =>
      resolve({
        ok: false,
        message: "The connection broke off, so nothing was stored. Try this photo again.",
      });
    request.send(file);
  });
}

function readAnswer(status: number, body: unknown): UploadAnswer {
  const answer = (body ?? {}) as {
    photo?: UploadedPhoto;
    alsoOn?: number[];
    notices?: { message: string }[];
    issues?: { message: string }[];
  };
  if (status === 201 && answer.photo) {
    const notices = (answer.notices ?? []).map(({ message }) => message);
    return { ok: true, photo: answer.photo, alsoOn: answer.alsoOn ?? [], notices };
  }
  const message = (answer.issues ?? []).map((one) => one.message).join(" ");
  return {
    ok: false,
    message: message || "The photo could not be taken in. Try again; if it happens again, try another photo.",
  };
}
