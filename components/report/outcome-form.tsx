"use client";

import { startTransition, useActionState } from "react";
import { Chip, type FormAnswer } from "@/components/ui";
import { outcomes, type Outcome } from "@/lib/assess";
import { outcomeWords } from "@/lib/report";
import styles from "./side-by-side.module.css";

/** What the change did, as buttons; the one that is pressed again is taken back. Works without JavaScript. */
export function OutcomeForm({
  outcome,
  action,
}: {
  outcome: Outcome | null;
  action: (before: FormAnswer, form: FormData) => Promise<FormAnswer>;
}) {
  const [said, run, pending] = useActionState(action, { done: true, text: "" });
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
      {said.text && <p role={said.done ? "status" : "alert"}>{said.text}</p>}
    </form>
  );
}
