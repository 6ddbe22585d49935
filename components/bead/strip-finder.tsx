"use client";

import { ScanLine } from "lucide-react";
import { useState } from "react";
import { Button } from "@/components/ui";
import type { Scale } from "@/lib/marks";
import { stripSentence } from "@/lib/strip";
import { lookForStrip, type StripPhoto } from "./look-for-strip";
import styles from "./scale-panel.module.css";

/** One press: the printed strip is looked for in the photo, and becomes its scale or a sentence on why not. */
export function StripFinder({ photo, onFound }: { photo: StripPhoto; onFound: (scale: Scale) => void }) {
  const [busy, setBusy] = useState(false);
  const [refused, setRefused] = useState<string | null>(null);
  const look = async () => {
    setBusy(true);
    setRefused(null);
    try {
      const found = await lookForStrip(photo);
      if (found.ok) onFound(found.value);
      else setRefused(found.issues.map(stripSentence).join(" "));
    } catch {
      setRefused("The photo could not be searched just now. Try again, or pick two points on a rule.");
    } finally {
      setBusy(false);
    }
  };
  return (
    <div>
      <Button onClick={() => void look()} disabled={busy}>
        <ScanLine aria-hidden="true" size={22} />{" "}
        {busy ? "Looking for the strip …" : "Find the printed strip"}
      </Button>{" "}
      <a href="/strip" target="_blank" rel="noreferrer">
        Print one
      </a>
      {refused && (
        <p className={styles.problem} role="alert">
          {refused}
        </p>
      )}
    </div>
  );
}
