import { Button, type FormAnswer } from "@/components/ui";
import styles from "@/components/ui/form.module.css";

/** The save button with the sentence that came back. */
export function SaveBar({
  pending,
  said,
  children,
}: {
  readonly pending: boolean;
  readonly said: FormAnswer | null;
  readonly children: string;
}) {
  return (
    <>
      <div className={styles.row}>
        <Button type="submit" tone="main" disabled={pending}>
          {pending ? "Working …" : children}
        </Button>
      </div>
      {said && (
        <p
          className={`${styles.said} ${said.done ? "" : styles.refused}`}
          role={said.done ? "status" : "alert"}
        >
          {said.text}
        </p>
      )}
    </>
  );
}
