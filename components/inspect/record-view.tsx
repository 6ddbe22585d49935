import { page, Panel } from "@/components/ui";
import {
  beadRows,
  keyWords,
  recordSections,
  resultNames,
  resultTitle,
  revisionTitle,
  ranBySigner,
  signedRole,
  signerWords,
  type RecordRow,
  type Signed,
  type SignedRecord,
} from "@/lib/inspect";
import { standingSentence, standingTitle } from "@/lib/signature";
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
  signed,
}: {
  readonly record: SignedRecord;
  /** Null while it is a draft. */
  readonly signed: Signed | null;
}) {
  const { signature } = record;
  return (
    <>
      {signed && <StandingPanel signed={signed} />}
      <Panel
        title={resultTitle(signed)}
        tone={signed?.standing.kind === "unverified" ? "danger" : tones[record.result]}
      >
        <p className={styles.result}>{resultNames[record.result]}</p>
        <p className={page.note}>{record.statement}</p>
      </Panel>
      {signature && signed && <SignaturePanel record={record} signature={signature} signed={signed} />}
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

const standingTones = {
  "signed-here": "ok",
  "before-keys": "straw",
  "signed-elsewhere": "straw",
  unverified: "danger",
} as const;

/** What speaks for the record, before anything it says. */
function StandingPanel({ signed: { standing } }: { readonly signed: Signed }) {
  return (
    <Panel title={standingTitle(standing)} tone={standingTones[standing.kind]}>
      <p>{standingSentence(standing)}</p>
    </Panel>
  );
}

function SignaturePanel({
  record,
  signature,
  signed,
}: {
  readonly record: SignedRecord;
  readonly signature: NonNullable<SignedRecord["signature"]>;
  readonly signed: Signed;
}) {
  const { revision, signedAt, acknowledgement, reason, changes } = signature;
  const key = keyWords(signature);
  const ran = ranBySigner(record, signature);
  return (
    <Panel title={revisionTitle(signed, revision)} tone="blue">
      <p>
        {signerWords(signed, signature)}, on {signedAt.slice(0, 10)} at {signedAt.slice(11, 16)} UTC.{" "}
        {signedRole(signed)}
      </p>
      {ran && (
        <p>
          <strong>{ran}</strong>
        </p>
      )}
      {key && <p>{key}</p>}
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
