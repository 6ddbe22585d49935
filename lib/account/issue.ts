import type { Issue, Line } from "@/lib/base";
import { PASSPHRASE_LENGTH } from "./auth";

export type AccountIssueCode =
  | "sign-in-refused"
  | "too-many-tries"
  | "too-many-photos"
  | "too-many-replies"
  | "too-many-codes"
  | "sign-in-name-taken"
  | "sign-in-name-not-usable"
  | "passphrase-short"
  | "passphrase-long"
  | "passphrase-before-wrong"
  | "code-unknown"
  | "passphrase-common"
  | "passphrase-wrong"
  | "session-gone"
  | "second-factor-wanted"
  | "second-factor-wrong"
  | "second-factor-on"
  | "second-factor-none-begun"
  | "person-gone"
  | "account-missing"
  | "token-name-missing"
  | "token-gone";
export type AccountIssue = Issue<AccountIssueCode>;

const sentences: Readonly<Record<AccountIssueCode, (data: AccountIssue["data"]) => string>> = {
  "sign-in-refused": () => "Name and passphrase do not fit together. Check both and try again.",
  "too-many-tries": ({ seconds }) =>
    `Too many tries with this name. Wait ${seconds} seconds, then try again.`,
  "too-many-photos": ({ seconds }) =>
    `Too many photos came in by this code just now, so this one was not taken. Wait ${seconds} seconds and send it again; your form stays.`,
  "too-many-codes": ({ seconds }) =>
    `Too many codes that lead nowhere came from here. Wait ${seconds} seconds, then try the code on the bench again.`,
  "too-many-replies": ({ seconds }) =>
    `Too many replies one after the other. Wait ${seconds} seconds, then send it again.`,
  "sign-in-name-taken": () => "Somebody already signs in with this name. Choose another one.",
  "sign-in-name-not-usable": () =>
    "A sign-in name has 2 to 40 letters, digits, dots or underscores, without spaces.",
  "passphrase-short": () => `A passphrase has at least ${PASSPHRASE_LENGTH.least} characters.`,
  "passphrase-long": () => `A passphrase has at most ${PASSPHRASE_LENGTH.most} characters.`,
  "code-unknown": () =>
    "This code is not known, was used, or is too old. Ask the owner of this Toeline for another one.",
  "passphrase-before-wrong": () => "The passphrase until now is another one. Nothing was changed.",
  "passphrase-common": () =>
    "This passphrase is among those that are guessed first. Take four or five words that do not belong together.",
  "second-factor-wanted": () =>
    "This account asks for a number from your phone besides. Type it, or one of your recovery codes, and sign in again.",
  "second-factor-wrong": () =>
    "This number does not fit. Wait for the next one and type that; each works once. If none fits, check the clock of phone and machine.",
  "second-factor-on": () => "A number from your phone is asked for already.",
  "second-factor-none-begun": () => "Nothing was begun here. Reload the page and begin anew.",
  "session-gone": () => "This sign-in has ended already.",
  "passphrase-wrong": () => "This passphrase is not the signer's. Nothing was signed; try again.",
  "person-gone": () => "This person is no longer in the list. Reload the page.",
  "account-missing": () => "This person has no account yet. Give them a sign-in name first.",
  "token-name-missing": () =>
    "Give the token a name of up to 32 letters, so that you know later what uses it.",
  "token-gone": () => "This token does not exist any more.",
};

export const isAccountIssue = (found: Issue): found is AccountIssue => Object.hasOwn(sentences, found.code);

export function accountSentence({ code, data }: AccountIssue): string {
  return sentences[code](data);
}

/** What is told while a throttle lets nothing through. `seconds`: how long. */
export function tooMany(
  code: "too-many-photos" | "too-many-replies" | "too-many-codes",
  seconds: number,
): Line {
  return { code, message: accountSentence({ code, path: [], data: { seconds } }) };
}
