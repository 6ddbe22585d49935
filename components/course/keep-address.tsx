"use client";

import { useState, useSyncExternalStore } from "react";
import { Button, page } from "@/components/ui";

const never = () => () => undefined;

/** Said once, right after handing in: this address is the way back to the answer. */
export function KeepAddress({ address }: { address: string }) {
  const origin = useSyncExternalStore(
    never,
    () => window.location.origin,
    () => "",
  );
  const [kept, setKept] = useState<string | null>(null);
  const keep = async () => {
    const url = `${origin}${address}`;
    try {
      const shares = "share" in navigator;
      if (shares) await navigator.share({ title: "My hand-in", url });
      else await window.navigator.clipboard.writeText(url);
      setKept(shares ? "Shared." : "Copied.");
    } catch {
      setKept("Hold the address below to copy it.");
    }
  };
  return (
    <div className={page.done} role="status">
      <strong>Handed in. Keep this page’s address: your feedback appears here.</strong>
      <p>Whoever has the address sees it, so keep it to yourself. It is shown nowhere else.</p>
      <p className={page.address}>
        {origin}
        {address}
      </p>
      <div className={page.buttons}>
        <Button onClick={() => void keep()}>Keep the address</Button>
        {kept && <span>{kept}</span>}
      </div>
    </div>
  );
}
