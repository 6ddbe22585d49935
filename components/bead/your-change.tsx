import Link from "next/link";
import type { TriedChange } from "@/lib/assess";
import styles from "./workbench.module.css";

/** On top of a bead that is still to be run: the change it is run with, until there is something of it to see. */
export function YourChange({
  tried,
  previous,
}: {
  tried: TriedChange;
  previous: { readonly id: string; readonly number: number } | null;
}) {
  return (
    <aside className={styles.yours} aria-label="Your change" data-testid="your-change">
      <p>
        Your change: <strong>{[tried.sentence, tried.step].filter(Boolean).join(" ")}</strong>
      </p>
      {previous && <Link href={`/beads/${previous.id}/card`}>Bench card</Link>}
    </aside>
  );
}
