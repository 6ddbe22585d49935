import { MAX_PHOTO_BYTES, MAX_PHOTO_MB, ok, refused, type Answer, type Line, type Refusal } from "@/lib/base";

export interface PhotoToSend<T> {
  readonly to: string;
  readonly photo: File;
  readonly headers?: Readonly<Record<string, string>>;
  /** Takes out of the body of a 201 what the screen needs; null when it is not there. */
  readonly read: (body: Record<string, unknown>) => T | null;
  /** Sentences for this photo: the connection broke off; the server refused it without saying why. */
  readonly words: { readonly brokeOff: string; readonly refused: string };
  /** Share of the bytes that went out, 0 to 1. */
  readonly onProgress: (share: number) => void;
}

/**
 * Sends one photo's bytes. XMLHttpRequest, because fetch cannot report how much has gone out.
 * Never rejects: a cut connection is an answer with a sentence.
 */
export function sendPhoto<T>(sending: PhotoToSend<T>): Promise<Answer<T>> {
  const { to, photo, headers = {}, words, onProgress } = sending;
  const unfit = unfitPhoto(photo);
  if (unfit) return Promise.resolve(unfit);
  return new Promise((resolve) => {
    const request = new XMLHttpRequest();
    request.open("POST", to);
    request.setRequestHeader("content-type", "application/octet-stream");
    for (const [name, value] of Object.entries(headers)) request.setRequestHeader(name, value);
    request.responseType = "json";
    request.upload.onprogress = (event) =>
      onProgress(event.lengthComputable ? event.loaded / event.total : 0);
    request.onload = () => resolve(readAnswer(request.status, request.response, sending));
    request.onerror = request.onabort = () => resolve(refused("unreachable", words.brokeOff));
    request.send(photo);
  });
}

/** What can be refused before a byte goes out. */
export function unfitPhoto({ size }: File): Refusal | null {
  if (size === 0) return refused("photo-empty", "This file is empty. Take or choose the photo again.");
  if (size <= MAX_PHOTO_BYTES) return null;
  return refused(
    "photo-too-large",
    `This photo has ${Math.ceil(size / 2 ** 20)} MB; up to ${MAX_PHOTO_MB} MB can be taken in. Send it at a smaller size.`,
  );
}

function readAnswer<T>(status: number, body: unknown, { read, words }: PhotoToSend<T>): Answer<T> {
  // Null where the body was no JSON, as from something between us and the server.
  const answer = (body ?? {}) as Record<string, unknown>;
  const value = status === 201 ? read(answer) : null;
  if (value !== null) return ok(value);
  const issues = (answer.issues ?? []) as readonly Line[];
  if (issues.some(({ message }) => message)) return { ok: false, issues };
  // Something between us and the server answered for it: that says nothing of the photo.
  return status >= 500 ? refused("unreachable", words.brokeOff) : refused("refused", words.refused);
}
