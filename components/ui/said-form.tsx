"use client";

import { startTransition, useActionState, type ReactNode } from "react";
import { inWords, type Answer } from "@/lib/base";
import { Button, type ButtonProps } from "./button";
import form from "./form.module.css";
import page from "./page.module.css";

/** What a form tells when it is done. */
export interface Said {
  readonly text: string;
  /** Shown once and not kept, as a new token is. */
  readonly once?: string;
}

export type SaidAction = (before: Answer<Said>, form: FormData) => Promise<Answer<Said>>;

/** Before anything was sent. */
export const nothingSaid: Answer<Said> = { ok: true, value: { text: "" } };

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
  action: SaidAction;
  submit: ReactNode;
  tone?: NonNullable<ButtonProps["tone"]>;
  children?: ReactNode;
  className?: string;
}) {
  const [answer, run, pending] = useActionState(action, nothingSaid);
  return (
    <form
      className={className ?? form.form}
      onSubmit={(event) => {
        // Through the handler and not the attribute: React empties a form after its action, refusals included.
        event.preventDefault();
        const { submitter } = event.nativeEvent as SubmitEvent;
        const data = new FormData(event.currentTarget, submitter);
        startTransition(() => run(data));
      }}
      action={run}
    >
      {children}
      <div className={form.row}>
        <Button type="submit" tone={tone} disabled={pending}>
          {pending ? "Working …" : submit}
        </Button>
      </div>
      <SaidLine answer={answer} />
    </form>
  );
}

/** The sentence that came back, told to screen readers as well. */
export function SaidLine({ answer }: { answer: Answer<Said> | null }) {
  const text = answer && (answer.ok ? answer.value.text : inWords(answer));
  if (!answer || !text) return null;
  return (
    <p className={`${form.said} ${answer.ok ? "" : form.refused}`} role={answer.ok ? "status" : "alert"}>
      {text}
      {answer.ok && answer.value.once && (
        <>
          {" "}
          <code className={page.mono}>{answer.value.once}</code>
        </>
      )}
    </p>
  );
}
