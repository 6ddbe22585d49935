import { page, Panel } from "@/components/ui";
import { beadRows, recordSections, resultNames, type RecordRow, type SignedRecord } from "@/lib/inspect";
import styles from "./inspect.module.css";

function Rows({ rows }: { readonly rows: readonly RecordRow[] }) {
  return (
    <dl className={styles.rows}>
      {rows.map(({ label, value }, i) => (
        <div key={i} style={{ display: "contents" }}>
          <dt>{label}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}

const tones = { accepted: "ok", "not-accepted": "danger", open: "straw" } as const;

/** A record in words: signed as it was signed, or a draft as it would be. */
export function RecordView({
  record,
  signer,
}: {
  readonly record: SignedRecord;
  readonly signer: string | null;
}) {
  const { signature } = record;
  return (
    <>
      <Panel title="Result" tone={tones[record.result]}>
        <p className={styles.result}>{resultNames[record.result]}</p>
        <p className={page.note}>{record.statement}</p>
      </Panel>
      {signature && <SignaturePanel signature={signature} signer={signer} />}
      <Points record={record} />
      {recordSections(record).map(({ title, rows }) => (
        <Panel key={title} title={title}>
          {rows.length === 0 ? <p>None recorded.</p> : <Rows rows={rows} />}
        </Panel>
      ))}
      {record.beads.map((bead) => (
        <Panel
          key={bead.id}
          title={`Bead ${bead.number}, revision ${bead.revision}`}
          tone={tones[bead.result]}
        >
          {bead.photos.map(({ id, sha256, role }, i) => (
            // Served by our own route at its own size; next/image would fetch it again.

            <img
              key={id}
              src={`/api/photos/${sha256}/small`}
              alt={`Photo ${i + 1} of bead ${bead.number}, ${role}`}
              style={{ maxWidth: "100%", maxHeight: 320 }}
              loading="lazy"
            />
          ))}
          <Rows rows={beadRows(bead)} />
        </Panel>
      ))}
    </>
  );
}

/** What keeps a record from "accepted", and what is only noted. */
export function Points({ record }: { readonly record: SignedRecord }) {
  if (record.points.length === 0) return null;
  return (
    <Panel title="Open points and notes" tone="straw">
      <ul className={styles.points}>
        {record.points.map(({ sentence, weight }, i) => (
          <li key={i}>
            <strong>{weight === "open" ? "Open:" : "Note:"}</strong> {sentence}
          </li>
        ))}
      </ul>
    </Panel>
  );
}

function SignaturePanel({
  signature,
  signer,
}: {
  readonly signature: NonNullable<SignedRecord["signature"]>;
  readonly signer: string | null;
}) {
  const { revision, signedAt, acknowledgement, reason, changes } = signature;
  return (
    <Panel title={`Signed, revision ${revision}`} tone="blue">
      <p>
        {signer ?? "An inspector whose name was removed"}, identification {signature.signer.mark ?? "none"},
        on {signedAt.slice(0, 10)} at {signedAt.slice(11, 16)} UTC.
      </p>
      {acknowledgement && <p>To the open points: {acknowledgement}</p>}
      {reason && <p>Reason of this revision: {reason}</p>}
      {changes.length > 0 && (
        <>
          <p>What changed:</p>
          <ul className={styles.points}>
            {changes.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </>
      )}
    </Panel>
  );
}
