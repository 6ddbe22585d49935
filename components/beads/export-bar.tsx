import { Download } from "lucide-react";
import { buttonClass } from "@/components/ui";
import styles from "./export-bar.module.css";

/** What each button takes away. */
const files = [
  { href: "/api/export/archive.zip", label: "Archive with photos" },
  { href: "/api/export/beads.csv", label: "Beads, CSV" },
  { href: "/api/export/marks.csv", label: "Marks, CSV" },
  { href: "/api/export/beads.json", label: "Beads, JSON" },
] as const;

/** Takes all beads found away as a file. An ordinary form; what is chosen in the list has its own way out. */
export function ExportBar({
  count,
  hidden,
}: {
  /** null: more than were counted. */
  count: number | null;
  hidden: readonly (readonly [name: string, value: string])[];
}) {
  return (
    <details className={styles.bar}>
      <summary className={styles.summary}>
        <Download size={20} aria-hidden="true" /> Export
      </summary>
      <form method="get" className={styles.form}>
        {hidden.map(([name, value]) => (
          <input key={`${name} ${value}`} type="hidden" name={name} value={value} />
        ))}
        <p>
          {count === 1
            ? "The bead found."
            : count === null
              ? "All beads found."
              : `All ${count} beads found.`}{" "}
          To take only some along, choose them in the list.
        </p>
        <p>
          The archive holds the photos as the camera wrote them, with what it wrote into them: often the time,
          the phone and the place. The other files hold no photos.
        </p>
        <div className={styles.row}>
          {files.map(({ href, label }) => (
            <button key={href} type="submit" formAction={href} className={buttonClass()}>
              {label}
            </button>
          ))}
        </div>
      </form>
    </details>
  );
}
