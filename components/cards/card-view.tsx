import { FileText, Flame } from "lucide-react";
import { Button, buttonClass, page, Panel } from "@/components/ui";
import type { CardSheetDocument } from "@/lib/report";
import styles from "./cards.module.css";

/** A shop's card: that it is no qualified procedure first, the ranges large, then heat, steel and what a code asks. */
export function CardView({
  sheet,
  pdf,
  onBegin,
  children,
}: {
  sheet: CardSheetDocument;
  pdf: string;
  /** Begins a bead by it; null for whoever may not, or where it is out of use. */
  onBegin: (() => Promise<void>) | null;
  children?: React.ReactNode;
}) {
  return (
    <main className={page.page} data-testid="card">
      <h1>{sheet.title}</h1>
      <p className={styles.statement}>{sheet.statement}</p>
      <p>
        <strong>{sheet.line}</strong>
      </p>
      <div className={styles.actions}>
        {onBegin && (
          <form action={onBegin}>
            <Button type="submit" size="large" tone="main">
              <Flame size={22} aria-hidden="true" /> Run a bead by it
            </Button>
          </form>
        )}
        <a className={buttonClass()} href={pdf}>
          <FileText size={20} aria-hidden="true" /> PDF
        </a>
        {children}
      </div>
      <dl className={styles.dials}>
        {sheet.dials.map(({ label, value, range }) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd className={styles.range}>{range}</dd>
            {value && <dd>begin at {value}</dd>}
          </div>
        ))}
      </dl>
      <p className={page.note}>{sheet.dialsNote}</p>
      <Rows title="What stays the same" rows={sheet.fixed.map((row) => ({ ...row, note: null }))} />
      <Rows title="Heat" rows={sheet.heat} />
      <Rows title="Steel" rows={sheet.steel} />
      <p className={page.note}>{sheet.steelNote}</p>
      <Rows title={sheet.essentialsTitle} rows={sheet.essentials} />
      {sheet.note && (
        <Panel title="Note" tone="straw">
          <p>{sheet.note}</p>
        </Panel>
      )}
      <ul className={styles.cautions}>
        {sheet.cautions.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </main>
  );
}

function Rows({ title, rows }: { title: string; rows: CardSheetDocument["heat"] }) {
  if (rows.length === 0) return null;
  return (
    <Panel title={title}>
      <dl className={styles.rows}>
        {rows.map(({ label, value, note }) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>
              <strong>{value}</strong>
              {note && <small>{note}</small>}
            </dd>
          </div>
        ))}
      </dl>
    </Panel>
  );
}
