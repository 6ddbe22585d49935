import { Check, CircleAlert, HardDriveUpload, LoaderCircle } from "lucide-react";
import type { KeptBeadSaving } from "@/components/offline";
import { isAway, type SaveState } from "@/components/saving";
import styles from "./save-note.module.css";

/** Whether what is on the screen is also in the store, and where it is while it is not. */
export function SaveNote({
  state,
  unsent,
  keeps,
}: {
  state: SaveState;
  unsent: KeptBeadSaving["unsent"];
  keeps: boolean;
}) {
  const refusal = state.kind === "refused" ? state.refusal : state.kind === "saving" ? state.after : null;
  const waits = refusal !== null && isAway(refusal);
  return (
    <span
      className={styles.note}
      role="status"
      data-testid="save-state"
      data-state={waits ? "waiting" : state.kind}
    >
      {waits && (
        <>
          <HardDriveUpload size={18} aria-hidden="true" />{" "}
          {keeps ? "Kept on this device" : "Only on this screen"}, {unsent.count} to send
        </>
      )}
      {!waits && state.kind === "saved" && (
        <>
          <Check size={18} aria-hidden="true" /> Saved
        </>
      )}
      {!waits && state.kind === "saving" && (
        <>
          <LoaderCircle size={18} aria-hidden="true" /> Saving
        </>
      )}
      {!waits && (state.kind === "refused" || state.kind === "collided") && (
        <>
          <CircleAlert size={18} aria-hidden="true" /> Not saved
        </>
      )}
    </span>
  );
}
