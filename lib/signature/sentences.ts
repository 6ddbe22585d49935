import { fingerprint } from "./public-key";
import type { Standing } from "./standing";

const day = (at: string): string => `${at.slice(0, 10)} at ${at.slice(11, 16)} UTC`;

/** Why something could not be verified, as the rest of a sentence. */
export const faultWords: Readonly<Record<Extract<Standing, { kind: "unverified" }>["why"], string>> = {
  missing: "the text names a key, and the signature is not with it",
  none: "it carries no signature",
  "other-subject": "its signature was given for another record",
  "other-digest": "its signature was given for another text",
  "other-key": "its signature is by another key than that of the signer it names",
  "key-unknown": "the key of its signature is not known here",
  "key-false": "what came as the key of its signature is another key",
  "after-end": "its signature is dated after its key had ended",
  "does-not-fit": "its signature does not fit the text",
  "row-differs": "what stands beside the text is not what the text says",
  "text-changed": "the text no longer gives its digest",
};

/** Two or three words for lists, headings and the top of a page of paper. */
export function standingTitle(standing: Standing): string {
  switch (standing.kind) {
    case "signed-here":
      return "Signed";
    case "before-keys":
      return "Signed before keys were kept";
    case "signed-elsewhere":
      return "Imported, key of another installation";
    case "unverified":
      return standing.imported ? "Imported, unverified" : "Unverified";
  }
}

/** What speaks for a record, in whole sentences. */
export function standingSentence(standing: Standing): string {
  switch (standing.kind) {
    case "signed-here":
      return `The signature fits: key ${fingerprint(standing.key.id)}, ${standing.key.algorithm}, on ${day(standing.at)}.`;
    case "before-keys":
      return "Signed before keys were kept: digest only. The digest and the log of this installation speak for it, and no key does.";
    case "signed-elsewhere": {
      const { key, at, confirmed } = standing;
      const fits = `The signature fits key ${fingerprint(key.id)} (${key.algorithm}), on ${day(at)}.`;
      return confirmed
        ? `${fits} The owner of this installation compared that fingerprint on ${confirmed.at.slice(0, 10)} and says whose it is: ${confirmed.whose}.`
        : `${fits} This installation has not confirmed whose key that is: compare the fingerprint with its holder before you rely on it.`;
    }
    case "unverified":
      return `Nobody here could verify this record: ${faultWords[standing.why]}. What follows is what the text says, and no more. Do not rely on it.`;
  }
}

const reasons: Readonly<Record<string, string>> = {
  "first-need": "made when it was first needed",
  "private-part-gone": "made anew, because the private part was not in the data folder",
  "own-passphrase": "made when its holder chose their passphrase",
  "one-time-code": "made when the passphrase was chosen with a one-time code",
  "passphrase-by-code": "ended, because the passphrase was chosen anew with a one-time code",
  "passphrase-by-other": "ended, because another passphrase was set that does not open it",
  "account-closed": "ended with the account of the person",
  "role-ended": "ended, because its holder signs records no longer",
  "person-removed": "ended with the removal of the person",
};

/** Why a key was begun or ended; one this version does not know is said as it stands. */
export const keyReason = (code: string): string => reasons[code] ?? code;
