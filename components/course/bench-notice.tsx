import { LocalTime } from "@/components/ui";
import styles from "./paper.module.css";
import { QrCode } from "./qr-code";

/** What hangs at the bench: the set-up to start with, and how to hand the bead in. */
export function BenchNotice({
  group,
  title,
  aim,
  facts,
  code,
  address,
  due,
}: {
  group: string;
  title: string;
  aim: string;
  facts: readonly { readonly label: string; readonly value: string }[];
  code: string;
  /** Where the code leads. */
  address: string;
  /** ISO 8601, UTC; null where there is no date. */
  due: string | null;
}) {
  return (
    <article className={styles.paper}>
      <p className={styles.kicker}>{group}</p>
      <h1>{title}</h1>
      {aim && <p className={styles.aim}>{aim}</p>}
      <dl className={styles.facts}>
        {facts.map(({ label, value }) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      <div className={styles.handIn}>
        <QrCode address={address} side={260} label={`Hand-in address ${address}`} />
        <div>
          <h2>Hand in your bead</h2>
          <ol>
            <li>Chip the slag, brush, let it cool. Glasses stay on.</li>
            <li>Point the phone’s camera at the code.</li>
            <li>Photograph the bead straight from above, with a rule beside it.</li>
          </ol>
          <p className={styles.code}>{code}</p>
          <p className={styles.address}>{address}</p>
          {due && (
            <p>
              Due <LocalTime iso={due} />
            </p>
          )}
        </div>
      </div>
      <p className={styles.foot}>
        The set-up is a starting point: the wire’s own data sheet and the qualified procedure govern.
      </p>
    </article>
  );
}
