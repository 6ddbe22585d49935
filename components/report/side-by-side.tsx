import Link from "next/link";
import { MarkOverlay } from "@/components/canvas";
import type { ComparedMark, Comparison, SheetDocument } from "@/lib/report";
import { ACROSS, printedScene } from "./printed-scene";
import styles from "./side-by-side.module.css";

interface Side {
  readonly id: string;
  readonly sheet: SheetDocument;
}

/** Two beads, the earlier on the left: photos with their marks, verdicts, what is gone, still there and new. */
export function SideBySide({
  before,
  after,
  comparison,
}: {
  before: Side;
  after: Side;
  comparison: Comparison;
}) {
  return (
    <main className={styles.main}>
      <h1>
        Bead {before.sheet.number} and bead {after.sheet.number}
      </h1>
      <div className={styles.pair}>
        {[before, after].map((side) => (
          <Half key={side.id} {...side} />
        ))}
      </div>
      <section>
        <h2>What was changed</h2>
        {comparison.setup.length === 0 ? (
          <p>Nothing that is recorded.</p>
        ) : (
          <Table
            heads={["", `Bead ${before.sheet.number}`, `Bead ${after.sheet.number}`]}
            rows={comparison.setup.map(({ label, before: was, after: is }) => [
              label,
              was ?? "not recorded",
              is ?? "not recorded",
            ])}
          />
        )}
      </section>
      <Group title="No longer marked" marks={comparison.gone} />
      <Group title="Still there" marks={comparison.still} />
      <Group title="New" marks={comparison.fresh} />
    </main>
  );
}

function Half({ id, sheet }: Side) {
  const [photo] = sheet.photos;
  return (
    <section className={styles.half}>
      <h2>
        <Link href={`/beads/${id}`}>
          {sheet.number} {sheet.title}
        </Link>
      </h2>
      {photo ? (
        <div className={styles.photo} style={{ aspectRatio: `${photo.widthPx} / ${photo.heightPx}` }}>
          <img src={`/api/photos/${photo.sha256}/small`} alt={`Bead ${sheet.number}`} />
          <MarkOverlay
            scene={printedScene(photo)}
            widthPx={photo.widthPx}
            heightPx={photo.heightPx}
            acrossUnits={ACROSS}
          />
        </div>
      ) : (
        <p>No photo.</p>
      )}
      <p>
        <strong>{sheet.verdict ? sheet.verdict.word : "No criteria chosen"}</strong>
        {sheet.verdict ? `, ${sheet.verdict.criteria}` : ""}
      </p>
    </section>
  );
}

function Group({ title, marks }: { title: string; marks: readonly ComparedMark[] }) {
  return (
    <section>
      <h2>{title}</h2>
      {marks.length === 0 ? (
        <p>None.</p>
      ) : (
        <Table
          heads={["", "Before", "After"]}
          rows={marks.map(({ name, before, after }) => [
            name,
            before?.join("; ") ?? "not marked",
            after?.join("; ") ?? "not marked",
          ])}
        />
      )}
    </section>
  );
}

function Table({ heads, rows }: { heads: readonly string[]; rows: readonly (readonly string[])[] }) {
  return (
    <table className={styles.table}>
      <thead>
        <tr>
          {heads.map((head) => (
            <th key={head} scope="col">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(([name, ...cells]) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            {cells.map((cell, i) => (
              <td key={i}>{cell}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
