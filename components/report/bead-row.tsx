import { layRow, type AlignedPhoto } from "@/lib/assess";
import type { SheetDocument } from "@/lib/report";
import type { LengthSystem } from "@/lib/units";
import { Ruler } from "./ruler";
import { chosenPhoto } from "./side-by-side";
import { LaidPicture } from "./side-by-side-photo";
import styles from "./side-by-side.module.css";

interface BeadOfRow {
  readonly id: string;
  readonly sheet: SheetDocument;
  readonly aligned: readonly AlignedPhoto[];
  /** What stands over its picture: the setting it was run with. */
  readonly title: string;
}

/** Beads under one another at one scale, in the order given; those without a photo are left out. */
export function BeadRow({ beads, system }: { beads: readonly BeadOfRow[]; system: LengthSystem }) {
  const shown = beads.flatMap((bead) => {
    const photo = chosenPhoto(bead.sheet);
    const aligned =
      photo && (bead.aligned[bead.sheet.photos.indexOf(photo)] ?? { kind: "as-taken" as const });
    return photo && aligned ? [{ ...bead, photo, side: { ...photo, aligned } }] : [];
  });
  if (shown.length === 0) return <p className={styles.note}>No bead of it has a photo yet.</p>;
  const { photos, isShared } = layRow(shown.map(({ side }) => side));
  return (
    <div className={styles.row}>
      {!isShared && (
        <p className={styles.note}>
          Not all are to scale: those without a scale are drawn as long as the longest, or as they were taken.
        </p>
      )}
      {shown.map(({ id, title, sheet, photo }, i) => (
        <figure key={id} className={styles.rowBead}>
          <figcaption>
            <a href={`/beads/${id}`}>
              {title} · bead {sheet.number}
            </a>
          </figcaption>
          <LaidPicture photo={photo} laid={photos[i]!} alt={`Bead ${sheet.number}, ${title}`} />
          {photos[i]!.rulerMm && <Ruler rulerMm={photos[i]!.rulerMm!} system={system} />}
        </figure>
      ))}
    </div>
  );
}
