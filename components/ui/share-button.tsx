"use client";

import { Share2 } from "lucide-react";
import { useState, type ReactNode } from "react";
import { Button } from "./button";
import { shareFile } from "./share-file";

/** Makes a file at a press and hands it on: by the share sheet of a phone, else as a download. */
export function ShareButton({
  make,
  title,
  children,
}: {
  /** Rejects where it cannot be made just now. */
  make: () => Promise<File>;
  title: string;
  children: ReactNode;
}) {
  const [state, setState] = useState<"idle" | "working" | "failed">("idle");
  const share = async () => {
    setState("working");
    try {
      await shareFile(await make(), title);
      setState("idle");
    } catch {
      setState("failed");
    }
  };
  return (
    <>
      <Button onClick={() => void share()} disabled={state === "working"}>
        <Share2 size={20} aria-hidden="true" /> {children}
      </Button>
      {state === "failed" && <span role="alert">It could not be made. Does Toeline answer? Try again.</span>}
    </>
  );
}
