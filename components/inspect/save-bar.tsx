import { Button, SaidLine, type Said } from "@/components/ui";
import styles from "@/components/ui/form.module.css";
import type { Answer } from "@/lib/base";

/** The save button with the sentence that came back. */
export function SaveBar({
  pending,
  said,
  children,
}: {
  readonly pending: boolean;
  readonly said: Answer<Said> | null;
  readonly children: string;
}) {
  return (
    <>
      <div className={styles.row}>
        <Button type="submit" tone="main" disabled={pending}>
          {pending ? "Working …" : children}
        </Button>
      </div>
      <SaidLine answer={said} />
    </>
  );
}
