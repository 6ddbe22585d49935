"use client";

import { ShieldCheck } from "lucide-react";
import { useState, useTransition } from "react";
import { Button, buttonClass, Field, form, page, Panel } from "@/components/ui";

/** What the verifier looked at, and one sentence per finding. */
export interface Verified {
  readonly looked: string;
  readonly head: string | null;
  readonly findings: readonly string[];
  /** Worth a word, and no fault of the records. */
  readonly remarks: readonly string[];
}

/** Asks the verifier and shows what it found; where it found nothing it says what it looked at. */
export function VerifyPanel({ verify }: { verify: (noted: string) => Promise<Verified> }) {
  const [answer, setAnswer] = useState<Verified | null>(null);
  const [noted, setNoted] = useState("");
  const [failed, setFailed] = useState(false);
  const [pending, start] = useTransition();
  const run = () =>
    start(async () => {
      setFailed(false);
      try {
        setAnswer(await verify(noted));
      } catch {
        setFailed(true);
      }
    });
  return (
    <Panel title="Do the records still fit?" tone="blue">
      <Field
        label="A head of the log kept elsewhere, if you have one"
        hint="The text of its file, or number:hash as printed. Where it stands, nothing before it was changed."
      >
        {(ids) => (
          <input
            {...ids}
            value={noted}
            onChange={({ target }) => setNoted(target.value)}
            autoComplete="off"
            maxLength={4000}
          />
        )}
      </Field>
      <Button tone="main" onClick={run} disabled={pending}>
        <ShieldCheck aria-hidden="true" size={22} /> {pending ? "Looking …" : "Verify everything"}
      </Button>
      <a className={buttonClass("plain")} href="/api/log/head">
        Head of the log, to keep elsewhere
      </a>
      <div aria-live="polite">
        {failed && (
          <p className={`${form.said} ${form.refused}`}>
            The records could not be read just now. Reload the page and try again.
          </p>
        )}
        {answer && (
          <>
            <p className={`${form.said} ${answer.findings.length === 0 ? "" : form.refused}`}>
              {answer.findings.length === 0
                ? `Everything fits: ${answer.looked}.`
                : `${answer.findings.length === 1 ? "One finding" : `${answer.findings.length} findings`} ${answer.looked && `among ${answer.looked}`}. Keep a copy of the data folder before anything is repaired.`}
            </p>
            <ul>
              {answer.findings.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
            {answer.remarks.map((line) => (
              <p key={line} className={page.note}>
                {line}
              </p>
            ))}
            {answer.head && (
              <p className={page.note}>
                Newest entry: <span className={page.mono}>{answer.head}</span>. Kept outside this machine and
                given back above, it shows later whether anything before it was changed or cut off.
              </p>
            )}
          </>
        )}
      </div>
    </Panel>
  );
}
