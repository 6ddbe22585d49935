import { Button, Field, Panel } from "@/components/ui";
import type { Answer } from "@/lib/base";
import { ActionForm } from "./action-form";
import styles from "./course.module.css";

/** The student's reply beside the answer; the form only where they may write it. */
export function Reply({
  reply,
  day,
  action,
}: {
  reply: string | null;
  day: string | null;
  action: ((form: FormData) => Promise<Answer<unknown>>) | null;
}) {
  if (reply === null && action === null) return null;
  return (
    <Panel title="The student’s reply" tone="blue">
      {reply !== null && (
        <div>
          <p className={styles.words}>{reply}</p>
          <p className={styles.soft}>{day}</p>
        </div>
      )}
      {action && (
        <ActionForm action={action} label="Reply">
          <Field label={reply === null ? "Your reply" : "Write it anew"}>
            {(ids) => <textarea {...ids} name="reply" rows={3} maxLength={2000} required />}
          </Field>
          <Button type="submit" tone={reply === null ? "main" : "plain"}>
            Send the reply
          </Button>
        </ActionForm>
      )}
    </Panel>
  );
}
