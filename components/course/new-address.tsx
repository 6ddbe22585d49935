"use client";

import { useState, useTransition } from "react";
import { Button, page } from "@/components/ui";
import { inWords, type Answer } from "@/lib/base";
import { QrCode } from "./qr-code";

/** A new address for a student who lost theirs, shown once as letters and as a code to photograph. */
export function NewAddress({ renew }: { renew: () => Promise<Answer<{ readonly path: string }>> }) {
  const [answer, setAnswer] = useState<Answer<{ readonly path: string }> | null>(null);
  const [pending, start] = useTransition();
  const ask = () => start(async () => setAnswer(await renew()));
  const address = answer?.ok ? `${window.location.origin}${answer.value.path}` : null;
  return (
    <div className={page.stack}>
      <p>Did the student lose the address under which they read this? A new one ends the old one at once.</p>
      <div className={page.buttons}>
        <Button disabled={pending} onClick={ask}>
          Give a new address
        </Button>
      </div>
      {answer && !answer.ok && (
        <p className={page.alert} role="alert">
          {inWords(answer)}
        </p>
      )}
      {address && (
        <div className={page.done} role="status">
          <strong>Shown this once. Let them photograph it; whoever has it reads the feedback.</strong>
          <QrCode address={address} side={200} label={`New address ${address}`} />
          <p className={page.address}>{address}</p>
        </div>
      )}
    </div>
  );
}
