import { Check, CircleAlert, HardDriveUpload, LoaderCircle } from "lucide-react";
import type { KeptBeadSaving } from "@/components/offline";
import { isAway, refusalOf } from "@/components/saving";
import styles from "./save-note.module.css";

type Kept = Pick<KeptBeadSaving, "save" | "unsent" | "keeps" | "isNew">;

/** Whether what is on the screen is also in the store, and where it is while it is not. */
export function SaveNote({ kept }: { kept: Kept }) {
  const { save, unsent, isNew } = kept;
  const refusal = refusalOf(save.state);
  const isWaiting = refusal !== null && isAway(refusal);
  // Nothing was done yet, so there is nothing to say: "Saved" would be of nothing.
  const isBlank = isNew && save.state.kind === "saved" && unsent.count === 0;
  return (
    <span
      className={styles.note}
      role="status"
      data-testid="save-state"
      data-state={isWaiting ? "waiting" : save.state.kind}
    >
      {isWaiting ? <Waiting {...kept} /> : !isBlank && said[save.state.kind]}
    </span>
  );
}

/** On a phone the number alone is shown: there is no room for where it lies. */
function Waiting({ unsent, keeps }: Kept) {
  return (
    <>
      <HardDriveUpload size={18} aria-hidden="true" />
      <span>
        <span className={styles.where}>{keeps ? "Kept on this device, " : "Only on this screen, "}</span>
        {unsent.count} to send
      </span>
    </>
  );
}

const notSaved = (
  <>
    <CircleAlert size={18} aria-hidden="true" /> Not saved
  </>
);
const said = {
  saved: (
    <>
      <Check size={18} aria-hidden="true" /> Saved
    </>
  ),
  saving: (
    <>
      <LoaderCircle size={18} aria-hidden="true" /> Saving
    </>
  ),
  refused: notSaved,
  collided: notSaved,
} as const;
