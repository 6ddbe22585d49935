import { fail, issue, type Issue } from "@/lib/base";

/** Everything that can go wrong with a photo, its HTTP status, in the order of the checks. 200 marks a notice. Sentences: `sentences.ts`. */
const statuses = {
  "photo-too-large": 413,
  "photo-cut-off": 400,
  "photo-empty": 422,
  "photo-not-a-picture": 415,
  "photo-unsupported-picture": 415,
  "photo-camera-raw": 415,
  "photo-many-pictures": 422,
  "photo-too-many-pixels": 422,
  "photo-too-costly": 422,
  "photo-too-many-waiting": 429,
  "photo-too-small": 422,
  "photo-damaged": 422,
  "photo-damaged-in-places": 200,
  "photo-orientation-unreadable": 200,
  "photo-disk-full": 507,
  "photo-store-unusable": 500,
  "photo-missing": 404,
  "photo-altered": 409,
} as const;

export type PhotoIssueCode = keyof typeof statuses;
export type PhotoIssue = Issue<PhotoIssueCode>;

/** The HTTP status of an answer whose first issue has this code. */
export function photoIssueStatus(code: PhotoIssueCode): number {
  return statuses[code];
}

/** A store behind a network that does not answer, or answers no. `full`: it has no room. */
export class StoreTrouble extends Error {
  constructor(
    message: string,
    readonly full = false,
    options?: ErrorOptions,
  ) {
    super(message, options);
  }
}

export type Refusal = { readonly ok: false; readonly issues: readonly PhotoIssue[] };

export function refusal(code: PhotoIssueCode, data: Readonly<Record<string, string | number>> = {}): Refusal {
  return fail(issue(code, [], data));
}
