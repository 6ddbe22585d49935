import { Field, page, Panel, SaidForm, type SaidAction } from "@/components/ui";
import styles from "./inspect.module.css";

/** Sign-off: what is open answered in words, a reason where it is a correction, and the passphrase again. */
export function SignForm({
  action,
  signers,
  chooses,
  hasOpenPoints,
  isCorrection,
  ran,
}: {
  readonly action: SaidAction;
  readonly signers: readonly { readonly id: string; readonly title: string }[];
  /** On a machine without accounts whoever signs says who they are. */
  readonly chooses: boolean;
  readonly hasOpenPoints: boolean;
  readonly isCorrection: boolean;
  /** Which welds who may sign ran themself, a sentence for each such person; the record will say it. */
  readonly ran: readonly string[];
}) {
  return (
    <Panel title="Sign" tone="purple">
      <p>
        Signing freezes the record above, as this page shows it. It holds your identification and a digest of
        your name, and cannot be changed or deleted afterwards.
      </p>
      {ran.map((sentence) => (
        <p key={sentence} className={page.notice}>
          {sentence} The record will say “Inspected by the welder”.
        </p>
      ))}
      <SaidForm action={action} submit="Sign the record">
        {chooses && (
          <Field label="Inspector">
            {(ids) => (
              <select {...ids} name="signer">
                {signers.map(({ id, title }) => (
                  <option key={id} value={id}>
                    {title}
                  </option>
                ))}
              </select>
            )}
          </Field>
        )}
        {hasOpenPoints && (
          <Field label="What you say to the open points" hint="The record stays “open” while they are.">
            {(ids) => (
              <textarea {...ids} name="acknowledgement" rows={3} maxLength={2000} className={styles.area} />
            )}
          </Field>
        )}
        {isCorrection && (
          <Field label="Why the record is corrected">
            {(ids) => <textarea {...ids} name="reason" rows={2} maxLength={1000} className={styles.area} />}
          </Field>
        )}
        <Field label="Passphrase of the inspector">
          {(ids) => <input {...ids} name="passphrase" type="password" autoComplete="off" />}
        </Field>
      </SaidForm>
    </Panel>
  );
}
