import { Check, CircleAlert, LoaderCircle } from "lucide-react";
import type { SaveState } from "@/components/saving";
import styles from "./save-note.module.css";

/** Whether what is on the screen is also in the store. */
export function SaveNote({ state }: { state: SaveState }) {
  return (
    <span className={styles.note} role="status" data-testid="save-state" data-state={state.kind}>
      {state.kind === "saved" && (
        <>
          <Check size={18} aria-hidden="true" /> Saved
        </>
      )}
      {state.kind === "saving" && (
        <>
          <LoaderCircle size={18} aria-hidden="true" /> Saving
        </>
      )}
      {(state.kind === "refused" || state.kind === "collided") && (
        <>
          <CircleAlert size={18} aria-hidden="true" /> Not saved
        </>
      )}
    </span>
  );
}
