import { sendPhoto } from "@/components/saving";
import type { Answer } from "@/lib/base";
import type { RunChoices } from "@/lib/course";

export interface SentForm {
  readonly personId: string | null;
  readonly givenName: string | null;
  readonly note: string;
  readonly run: RunChoices;
  /** The rest of the set-up was as the exercise asks. */
  readonly asAsked: boolean;
}

/** Hands in one photo, with the form in a header. Never rejects. */
export function sendHandIn(
  code: string,
  photo: File,
  form: SentForm,
  onProgress: (share: number) => void,
): Promise<Answer<{ readonly address: string }>> {
  return sendPhoto({
    to: `/api/hand-in/${encodeURIComponent(code)}`,
    photo,
    headers: { "hand-in-form": encodeURIComponent(JSON.stringify(form)) },
    onProgress,
    read: ({ address }) => (typeof address === "string" ? { address } : null),
    words: {
      brokeOff: "The connection broke off, so nothing was handed in. Try again.",
      refused: "This could not be handed in. Try again; nothing was kept.",
    },
  });
}
