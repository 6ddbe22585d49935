import { symbolWords, type AtlasEntry, type LimitRow, type LimitTable } from "@/lib/atlas";
import { confidenceWords } from "@/lib/report";
import styles from "./limit-tables.module.css";

type Symbol = keyof typeof symbolWords;

/** The limits of every carried code, one under another, and what the letters in them mean. */
export function LimitTables({ limits }: { limits: AtlasEntry["limits"] }) {
  const { limited, silent } = limits;
  const symbols = symbolsIn(limited);
  return (
    <>
      {limited.map((table, i) => (
        <CodeLimits key={table.id} table={table} open={i < 1} />
      ))}
      {limited.length === 0 && <p>No carried code limits it by name: a qualified person decides.</p>}
      {symbols.length > 0 && (
        <dl className={styles.symbols}>
          {symbols.map((symbol) => (
            <div key={symbol}>
              <dt>{symbol}</dt>
              <dd>{symbolWords[symbol]}</dd>
            </div>
          ))}
        </dl>
      )}
      {silent.length > 0 && limited.length > 0 && (
        <p className={styles.note}>
          Not named in {silent.map(({ title }) => title).join("; ")}: there a qualified person decides.
        </p>
      )}
      <p className={styles.note}>
        The governing code, contract or procedure says which of these applies to a weld, if any; its own text
        decides.
      </p>
    </>
  );
}

/** Letters that stand alone in the limits shown. */
function symbolsIn(tables: readonly LimitTable[]): readonly Symbol[] {
  const text = tables
    .flatMap(({ rows }) => rows.flatMap(({ lines }) => lines.flatMap(({ when, says }) => [when, ...says])))
    .join(" ");
  const letters = new Set(text.split(/[^A-Za-z]+/));
  return (Object.keys(symbolWords) as Symbol[]).filter((symbol) => letters.has(symbol));
}

function CodeLimits({ table, open }: { table: LimitTable; open: boolean }) {
  const { title, edition, rows } = table;
  return (
    <details className={styles.code} open={open}>
      <summary>
        <span className={styles.title}>{title}</span> <span className={styles.edition}>{edition}</span>
      </summary>
      <div className={styles.rows}>
        {rows.map((row) => (
          <Clause key={row.id} row={row} />
        ))}
      </div>
    </details>
  );
}

function Clause({ row }: { row: LimitRow }) {
  const { clause, title, reach, lines, checkYourCopy } = row;
  return (
    <div className={styles.clause}>
      <div>
        <h3>{title}</h3>
        <p className={styles.note}>
          {clause}
          {reach && `; ${reach}`}
        </p>
        {checkYourCopy && (
          <p className={styles.check}>
            Check your copy:{" "}
            {[...new Set(lines.map(({ source }) => confidenceWords[source.confidence].split(":")[0]))].join(
              ", ",
            )}
            .
          </p>
        )}
      </div>
      <ul>
        {lines.map(({ when, says }, i) => (
          <li key={i}>
            {when && <span className={styles.when}>{when}</span>}
            <strong>{says.join("; ")}</strong>
          </li>
        ))}
      </ul>
    </div>
  );
}
