"use client";

import { useRef, useState, useTransition, type ReactNode } from "react";
import { page } from "@/components/ui";
import { inWords, refused, type Answer } from "@/lib/base";

/**
 * A form that sends its fields to an action and says in a sentence why something was refused; what was typed stays
 * then. Emptied after success, ready for the next one.
 */
export function ActionForm({
  action,
  children,
  className,
  label,
}: {
  action: (data: FormData) => Promise<Answer<unknown> | void>;
  children: ReactNode;
  className?: string | undefined;
  label?: string;
}) {
  const form = useRef<HTMLFormElement>(null);
  const [message, setMessage] = useState<string | null>(null);
  const [pending, start] = useTransition();
  const send = (data: FormData) =>
    start(async () => {
      const answer = await action(data).catch(orUnreachable);
      setMessage(answer && !answer.ok ? inWords(answer) : null);
      if (!answer || answer.ok) form.current?.reset();
    });
  return (
    <form
      ref={form}
      className={className ?? page.stack}
      aria-label={label}
      aria-busy={pending}
      onSubmit={(event) => {
        event.preventDefault();
        if (!pending) send(new FormData(event.currentTarget));
      }}
    >
      {children}
      {message && (
        <p className={page.alert} role="alert">
          {message}
        </p>
      )}
    </form>
  );
}

const unreachable = refused(
  "unreachable",
  "Toeline did not answer, so nothing was saved. Check the connection and try again.",
);

function orUnreachable(error: unknown): Answer<never> {
  // A redirect travels as an error and must go on travelling.
  if (error instanceof Error && "digest" in error) throw error;
  return unreachable;
}

/** A button for one deed with an answer. `sure`: asked before it is done, for what cannot be taken back. */
export function ActionButton({
  action,
  children,
  className,
  sure,
}: {
  action: () => Promise<Answer<unknown> | void>;
  children: ReactNode;
  className: string;
  sure?: string;
}) {
  const [message, setMessage] = useState<string | null>(null);
  const [asking, setAsking] = useState(false);
  const [pending, start] = useTransition();
  const run = () =>
    start(async () => {
      setAsking(false);
      const answer = await action();
      setMessage(answer && !answer.ok ? inWords(answer) : null);
    });
  return (
    <>
      {asking ? (
        <span className={page.buttons} role="group" aria-label={sure}>
          <span>{sure}</span>
          <button type="button" className={className} autoFocus onClick={run}>
            Yes
          </button>
          <button type="button" className={className} onClick={() => setAsking(false)}>
            No
          </button>
        </span>
      ) : (
        <button
          type="button"
          className={className}
          disabled={pending}
          onClick={sure ? () => setAsking(true) : run}
        >
          {children}
        </button>
      )}
      {message && (
        <p className={page.alert} role="alert">
          {message}
        </p>
      )}
    </>
  );
}
