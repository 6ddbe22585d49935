import { Button, Field, LocalTime, page, Panel } from "@/components/ui";
import type { Answer } from "@/lib/base";
import { ActionForm } from "./action-form";

/** The student's reply beside the answer; the form only where they may write it. */
export function Reply({
  reply,
  repliedAt,
  action,
}: {
  reply: string | null;
  /** ISO 8601, UTC. */
  repliedAt: string | null;
  action: ((form: FormData) => Promise<Answer<unknown>>) | null;
}) {
  if (reply === null && action === null) return null;
  return (
    <Panel title="The student’s reply" tone="blue">
      {reply !== null && (
        <div>
          <p className={page.words}>{reply}</p>
          {repliedAt && (
            <p className={page.note}>
              <LocalTime iso={repliedAt} />
            </p>
          )}
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
