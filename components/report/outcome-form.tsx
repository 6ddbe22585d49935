"use client";

import { startTransition, useActionState } from "react";
import { Chip, nothingSaid, type SaidAction } from "@/components/ui";
import { outcomes, type Outcome } from "@/lib/assess";
import { inWords } from "@/lib/base";
import { outcomeWords } from "@/lib/report";
import styles from "./side-by-side.module.css";

/** What the change did, as buttons; the one that is pressed again is taken back. Works without JavaScript. */
export function OutcomeForm({ outcome, action }: { outcome: Outcome | null; action: SaidAction }) {
  const [answer, run, pending] = useActionState(action, nothingSaid);
  const text = answer.ok ? answer.value.text : inWords(answer);
  return (
    <form
      action={run}
      onSubmit={(event) => {
        event.preventDefault();
        const data = new FormData(event.currentTarget, (event.nativeEvent as SubmitEvent).submitter);
        startTransition(() => run(data));
      }}
    >
      <p id="outcome-question">What did the change do?</p>
      <div className={styles.chips} role="group" aria-labelledby="outcome-question">
        {outcomes.map((one) => (
          <Chip
            key={one}
            type="submit"
            name="outcome"
            value={outcome === one ? "" : one}
            on={outcome === one}
            disabled={pending}
          >
            {outcomeWords[one]}
          </Chip>
        ))}
      </div>
      {text && <p role={answer.ok ? "status" : "alert"}>{text}</p>}
    </form>
  );
}
