"use client";

import { ShieldCheck } from "lucide-react";
import { useState, useTransition } from "react";
import { Button, form, page, Panel } from "@/components/ui";

/** What the verifier looked at, and one sentence per finding. */
export interface Verified {
  readonly looked: string;
  readonly head: string | null;
  readonly findings: readonly string[];
}

/** Asks the verifier and shows what it found; where it found nothing it says what it looked at. */
export function VerifyPanel({ verify }: { verify: () => Promise<Verified> }) {
  const [answer, setAnswer] = useState<Verified | null>(null);
  const [failed, setFailed] = useState(false);
  const [pending, start] = useTransition();
  const run = () =>
    start(async () => {
      setFailed(false);
      try {
        setAnswer(await verify());
      } catch {
        setFailed(true);
      }
    });
  return (
    <Panel title="Do the records still fit?" tone="blue">
      <Button tone="main" onClick={run} disabled={pending}>
        <ShieldCheck aria-hidden="true" size={22} /> {pending ? "Looking …" : "Verify everything"}
      </Button>
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
                : `${answer.findings.length === 1 ? "One finding" : `${answer.findings.length} findings`} among ${answer.looked}. Keep a copy of the data folder before anything is repaired.`}
            </p>
            <ul>
              {answer.findings.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
            {answer.head && (
              <p className={page.note}>
                Newest entry: <span className={page.mono}>{answer.head}</span>. Kept outside this machine and
                given back below, it shows later whether anything before it was changed or cut off.
              </p>
            )}
          </>
        )}
      </div>
    </Panel>
  );
}
