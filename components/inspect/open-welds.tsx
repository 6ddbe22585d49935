import { Panel } from "@/components/ui";
import { openWelds, type SignedRecord } from "@/lib/inspect";
import styles from "./inspect.module.css";

/** Before signing: each weld that is open, why, and what would close it. Nothing where none is. */
export function OpenWelds({ record }: { readonly record: SignedRecord }) {
  const welds = openWelds(record);
  if (welds.length === 0) return null;
  return (
    <Panel title="Open welds, and what would close them" tone="straw">
      {welds.map(({ weldId, number, reasons }) => (
        <section key={weldId} aria-label={`Weld ${number} is open`}>
          <h4 className={styles.openWeld}>Weld {number}</h4>
          <ul className={styles.points}>
            {reasons.map(({ sentence, closing }, i) => (
              <li key={i}>
                {sentence} <strong>{closing}</strong>
              </li>
            ))}
          </ul>
        </section>
      ))}
    </Panel>
  );
}
