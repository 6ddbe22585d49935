import { CroppedPhoto } from "@/components/picture";
import { CHECK_YOUR_COPY, type SheetDocument, type SheetSection } from "@/lib/report";
import { ACROSS_CROP, printedScene } from "./printed-scene";
import styles from "./sheet.module.css";

/** A cut and etched weld on the printed page: its figures, and the macro criteria row by row. */
export function SectionPart({
  photo,
  section,
  number,
}: {
  photo: SheetDocument["photos"][number];
  section: SheetSection;
  number: number;
}) {
  const { figures, unread, problems, verdict, report, crop } = section;
  return (
    <section>
      <h2>Section on photo {number}</h2>
      {crop && (
        <CroppedPhoto
          className={styles.crop}
          href={`/api/photos/${photo.sha256}/view`}
          scene={printedScene(photo, crop)}
          widthPx={photo.widthPx}
          heightPx={photo.heightPx}
          crop={crop}
          acrossUnits={ACROSS_CROP}
          label={`The weld on photo ${number}, cut and etched: its outline, the edges of the joint, the toes and the root.`}
        />
      )}
      {figures.length === 0 ? (
        <p>No size read.</p>
      ) : (
        <dl className={styles.figures}>
          {figures.map(({ id, name, text }) => (
            <div key={id}>
              <dt>{name}</dt>
              <dd>{text}</dd>
            </div>
          ))}
        </dl>
      )}
      {unread.length > 0 && <p className={styles.small}>Not read: {unread.join(", ")}.</p>}
      {problems.map((line) => (
        <p key={line}>{line}</p>
      ))}
      {verdict && <Rows verdict={verdict} />}
      {report.length > 0 && (
        <dl className={styles.figures}>
          {report.map(({ label, value }) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
      )}
      <p className={styles.small}>{section.caution}</p>
    </section>
  );
}

function Rows({ verdict }: { verdict: NonNullable<SheetSection["verdict"]> }) {
  return (
    <>
      <p>
        <strong>{verdict.word}</strong>: {verdict.criteria}. {verdict.long}
      </p>
      {verdict.checkYourCopy && <p>{CHECK_YOUR_COPY}</p>}
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">Result</th>
            <th scope="col">Row</th>
          </tr>
        </thead>
        <tbody>
          {verdict.clauses.map((row) => (
            <tr key={row.title}>
              <td>
                <strong>{row.result}</strong>
              </td>
              <td>
                {row.title}
                {row.detail && `: ${row.detail}`} <small>{row.clause}</small>
                {row.checkYourCopy && <small> Check your copy.</small>}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {verdict.notCovered.length > 0 && (
        <p className={styles.small}>Not judged here: {verdict.notCovered.join("; ")}</p>
      )}
    </>
  );
}
