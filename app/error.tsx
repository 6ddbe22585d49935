"use client";

import { Header } from "@/components/shell";
import { Button } from "@/components/ui";

/** Our own mistakes end here: a sentence and a way on, never a stack trace. */
export default function ErrorPage({
  error,
  reset,
}: {
  error: Error & { digest?: string };
  reset: () => void;
}) {
  return (
    <>
      <Header />
      <main
        style={{ padding: "var(--space-5)", display: "grid", gap: "var(--space-4)", justifyItems: "start" }}
      >
        <h1>This page could not be shown</h1>
        <p>What you had saved is safe. Try again; if it happens again, restart with npm start.</p>
        {error.digest && <p>Number for whoever looks after this machine: {error.digest}</p>}
        <Button tone="main" size="large" onClick={reset}>
          Try again
        </Button>
      </main>
    </>
  );
}
