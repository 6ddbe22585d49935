import { useEffect, useEffectEvent, useId, useState } from "react";
import styles from "./mark-card.module.css";

const LONGEST = 500;

/**
 * A note is one change however long it took to type: it is sent when the field is left, when the person has paused,
 * and when the card goes away.
 */
export function NoteField({
  note,
  onNote,
  readOnly,
}: {
  note: string;
  onNote: (note: string) => void;
  readOnly: boolean;
}) {
  const id = useId();
  const [typed, setTyped] = useState(note);
  const [known, setKnown] = useState(note);
  // Undo, redo or another tab changed the note: what is stored wins over what stood here.
  if (known !== note) {
    setKnown(note);
    setTyped(note);
  }
  const send = () => {
    if (typed !== note) onNote(typed);
  };
  const sendLater = useEffectEvent(send);
  useEffect(() => {
    const timer = window.setTimeout(() => sendLater(), 1200);
    return () => window.clearTimeout(timer);
  }, [typed]);
  useEffect(() => () => sendLater(), []);
  return (
    <div className={styles.choice}>
      <label htmlFor={id} className={styles.label}>
        Note
      </label>
      <textarea
        id={id}
        rows={2}
        maxLength={LONGEST}
        value={typed}
        readOnly={readOnly}
        placeholder="What else is there to see?"
        onChange={(event) => setTyped(event.target.value)}
        onBlur={send}
      />
    </div>
  );
}
