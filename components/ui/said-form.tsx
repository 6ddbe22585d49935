"use client";

import { startTransition, useActionState, type ReactNode } from "react";
import { Button, type ButtonProps } from "./button";
import styles from "./form.module.css";

/** What a form's action answers: a sentence, and whether it was done. */
export interface FormAnswer {
  readonly done: boolean;
  readonly text: string;
  /** Shown once and not kept, as a new token is. */
  readonly once?: string;
}

/**
 * A form whose action answers with a sentence, which is shown under the button and told to screen readers. It works
 * without JavaScript; what was typed stays when the action refuses.
 */
export function SaidForm({
  action,
  submit,
  tone = "main",
  children,
  className,
}: {
  action: (before: FormAnswer, form: FormData) => Promise<FormAnswer>;
  submit: ReactNode;
  tone?: NonNullable<ButtonProps["tone"]>;
  children?: ReactNode;
  className?: string;
}) {
  const [said, run, pending] = useActionState(action, { done: true, text: "" });
  return (
    <form
      className={className ?? styles.form}
      onSubmit={(event) => {
        // Through the handler and not the attribute: React empties a form after its action, refusals included.
        event.preventDefault();
        const form = event.currentTarget;
        const data = new FormData(form, (event.nativeEvent as SubmitEvent).submitter);
        startTransition(() => run(data));
      }}
      action={run}
    >
      {children}
      <div className={styles.row}>
        <Button type="submit" tone={tone} disabled={pending}>
          {pending ? "Working …" : submit}
        </Button>
      </div>
      {said.text && (
        <p
          className={`${styles.said} ${said.done ? "" : styles.refused}`}
          role={said.done ? "status" : "alert"}
        >
          {said.text}
          {said.once && (
            <>
              {" "}
              <code className={styles.mono}>{said.once}</code>
            </>
          )}
        </p>
      )}
    </form>
  );
}
