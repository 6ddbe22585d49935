"use client";

import Link from "next/link";
import { useRouter } from "next/navigation";
import { useCallback, useEffect, type MouseEvent } from "react";
import { flushAll } from "@/components/saving";
import { buttonClass, form } from "@/components/ui";

interface Turn {
  readonly href: string;
  readonly number: string;
}

/** Goes to a weld, by call or by Ctrl and Enter, once everything typed here is stored: that is where it is read from. */
function useTurning(before: Turn | null, next: Turn | null): (turn: Turn) => void {
  const router = useRouter();
  const go = useCallback((turn: Turn) => void flushAll().then(() => router.push(turn.href)), [router]);
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (event.key !== "Enter" || !(event.ctrlKey || event.metaKey)) return;
      const turn = event.shiftKey ? before : next;
      event.preventDefault();
      if (turn) go(turn);
    };
    document.addEventListener("keydown", press);
    return () => document.removeEventListener("keydown", press);
  }, [go, before, next]);
  return go;
}

/** From weld to weld: by link, or by Ctrl and Enter (with Shift back), also out of a field. */
export function WeldTurns({ before, next }: { readonly before: Turn | null; readonly next: Turn | null }) {
  const go = useTurning(before, next);
  const follow = (turn: Turn) => (event: MouseEvent<HTMLAnchorElement>) => {
    event.preventDefault();
    go(turn);
  };
  return (
    <nav aria-label="Welds" className={form.row}>
      {before && (
        <Link className={buttonClass()} href={before.href} onClick={follow(before)}>
          Back to weld {before.number}
        </Link>
      )}
      {next && (
        <Link
          className={buttonClass()}
          href={next.href}
          onClick={follow(next)}
          aria-keyshortcuts="Control+Enter"
        >
          Next: weld {next.number} (Ctrl Enter)
        </Link>
      )}
    </nav>
  );
}
