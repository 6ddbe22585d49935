import type { RunChoices } from "@/lib/course";

export interface SentForm {
  readonly personId: string | null;
  readonly givenName: string | null;
  readonly note: string;
  readonly run: RunChoices;
}

export type SentAnswer =
  { readonly ok: true; readonly address: string } | { readonly ok: false; readonly message: string };

const MAX_BYTES = 40 * 1024 * 1024;

/**
 * Sends the photo's bytes with the form in a header. XMLHttpRequest, because fetch cannot report how much has gone
 * out. Never rejects: a cut connection is an answer with a sentence.
 */
export function sendHandIn(
  code: string,
  photo: File,
  form: SentForm,
  onProgress: (share: number) => void,
): Promise<SentAnswer> {
  if (photo.size === 0)
    return Promise.resolve({ ok: false, message: "This file is empty. Take or choose the photo again." });
  if (photo.size > MAX_BYTES) {
    const megabytes = Math.ceil(photo.size / 2 ** 20);
    return Promise.resolve({
      ok: false,
      message: `This photo has ${megabytes} MB; up to 40 MB can be taken in. Send it at a smaller size.`,
    });
  }
  return new Promise((resolve) => {
    const request = new XMLHttpRequest();
    request.open("POST", `/api/hand-in/${encodeURIComponent(code)}`);
    request.setRequestHeader("content-type", "application/octet-stream");
    request.setRequestHeader("hand-in-form", encodeURIComponent(JSON.stringify(form)));
    request.responseType = "json";
    request.upload.onprogress = (event) =>
      onProgress(event.lengthComputable ? event.loaded / event.total : 0);
    request.onload = () => resolve(readAnswer(request.status, request.response));
    request.onerror = request.onabort = () =>
      resolve({ ok: false, message: "The connection broke off, so nothing was handed in. Try again." });
    request.send(photo);
  });
}

function readAnswer(status: number, body: unknown): SentAnswer {
  const answer = (body ?? {}) as { address?: string; issues?: { message: string }[] };
  if (status === 201 && answer.address) return { ok: true, address: answer.address };
  const message = (answer.issues ?? []).map((one) => one.message).join(" ");
  return { ok: false, message: message || "This could not be handed in. Try again; nothing was kept." };
}
