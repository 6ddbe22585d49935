"use client";

import { useSyncExternalStore, useTransition } from "react";
import { Button, FIRST_BEAD_KEY, page } from "@/components/ui";

/** Whether it was answered on this device; where the browser keeps nothing it is not asked at all. */
function isAnswered(): boolean {
  try {
    return localStorage.getItem(FIRST_BEAD_KEY) !== null;
  } catch {
    return true;
  }
}

function answer(): void {
  try {
    localStorage.setItem(FIRST_BEAD_KEY, "answered");
  } catch {
    // Then it is never asked.
  }
  dispatchEvent(new Event(FIRST_BEAD_KEY));
}

function hear(told: () => void): () => void {
  addEventListener(FIRST_BEAD_KEY, told);
  return () => removeEventListener(FIRST_BEAD_KEY, told);
}

/**
 * Offered once on each device: a bead marked step by step on a photo of the invented shop. The server writes it for everybody;
 * `askedOnceScript` keeps it out of sight where it was answered.
 */
export function FirstBeadOffer({ onBegin }: { onBegin: () => Promise<void> }) {
  const answered = useSyncExternalStore(hear, isAnswered, () => false);
  const [pending, start] = useTransition();
  if (answered && !pending) return null;
  return (
    <section className={`${page.notice} ${page.firstBead}`} aria-label="Your first bead">
      <div className={page.stack}>
        <p>
          <strong>New here?</strong> Mark a bead of the demo shop in four steps, from its scale to the answer.
          You can leave at any time, and delete it afterwards.
        </p>
        <div className={page.buttons}>
          <Button
            tone="main"
            disabled={pending}
            onClick={() =>
              start(async () => {
                answer();
                await onBegin();
              })
            }
          >
            {pending ? "Laying it out …" : "Show me"}
          </Button>
          <Button disabled={pending} onClick={answer}>
            Not now
          </Button>
        </div>
      </div>
    </section>
  );
}
