import type { Said } from "@/components/ui";
import { accountSentence, isAccountIssue, type AccountIssue } from "@/lib/account";
import { answerOf, ok, type Answer, type Result } from "@/lib/base";
import { recordSentence, type RecordIssue } from "@/lib/store";

/** What the store said, for a screen. */
export function recordAnswer<T>(result: Result<T, RecordIssue>): Answer<T> {
  return answerOf(result, recordSentence);
}

/** What the store said, for a form: `text` is told where it was done. */
export function recordSaid(result: Result<unknown, RecordIssue>, text: string): Answer<Said> {
  return result.ok ? ok({ text }) : recordAnswer(result);
}

/** What accounts or store said, for a screen: a passphrase is both's. */
export function passphraseAnswer<T>(result: Result<T, AccountIssue | RecordIssue>): Answer<T> {
  return answerOf(result, (found) =>
    isAccountIssue(found) ? accountSentence(found) : recordSentence(found),
  );
}

/** What the accounts said, for a screen. */
export function accountAnswer<T>(result: Result<T, AccountIssue>): Answer<T> {
  return answerOf(result, accountSentence);
}
