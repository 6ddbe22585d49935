"use client";

import Link from "next/link";
import { useRouter } from "next/navigation";
import { useEffect, useState, type ReactNode } from "react";
import { refusalOf } from "@/components/saving";
import { Button } from "@/components/ui";
import type { KeptBeadSaving } from "./kept-saving";
import styles from "./link-when-sent.module.css";

/** The way to a page that Toeline makes of the bead: it opens once Toeline has all of it, or as it is if told so. */
export function LinkWhenSent({
  href,
  kept,
  what,
  className,
  children,
}: {
  href: string;
  kept: Pick<KeptBeadSaving, "unsent" | "countUnsent" | "save">;
  /** Names the page at the beginning of a sentence: "The sheet". */
  what: string;
  className?: string | undefined;
  children: ReactNode;
}) {
  const router = useRouter();
  const [isWaiting, setWaiting] = useState(false);
  const { unsent, save } = kept;
  const isComplete = unsent.count === 0;
  const isRefused = refusalOf(save.state) !== null;
  useEffect(() => {
    if (isWaiting && isComplete) router.push(href);
  }, [isWaiting, isComplete, router, href]);
  return (
    <>
      <Link
        href={href}
        className={className}
        onClick={(event) => {
          if (kept.countUnsent().count === 0) return;
          event.preventDefault();
          setWaiting(true);
          void save.flush();
        }}
      >
        {children}
      </Link>
      {isWaiting && !isComplete && (isRefused || unsent.photos > 0) && (
        <div className={styles.waits} role="status">
          <p>
            {what} waits for {missing(unsent)}. It opens by itself once Toeline has it.
          </p>
          <Button onClick={() => router.push(href)}>Open it without</Button>
          <Button onClick={() => setWaiting(false)}>Stay here</Button>
        </div>
      )}
    </>
  );
}

function missing({ changes, photos }: KeptBeadSaving["unsent"]): string {
  const parts = [
    ...(photos > 0 ? [photos === 1 ? "a photo" : `${photos} photos`] : []),
    ...(changes ? ["your last changes"] : []),
  ];
  return parts.join(" and ");
}
