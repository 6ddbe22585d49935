import { MarkOverlay } from "@/components/picture";
import { CHECK_YOUR_COPY, WIDTH_NOTE, type SheetDocument } from "@/lib/report";
import { AnswerCard } from "./answer-card";
import { paperManner } from "./paper-manner";
import { ACROSS, printedScene } from "./printed-scene";
import { SharePhoto } from "./share-photo";
import { SectionPart } from "./sheet-section";
import styles from "./sheet.module.css";

/** Where the page is narrow and of light, a quarter of the bytes will do; paper never takes that picture. */
const READ_ON_PHONE = "screen and (max-width: 700px)";

/** The printed page of one bead. Every word on it comes from the document; this file only sets it. */
export function Sheet({ sheet }: { sheet: SheetDocument }) {
  return (
    <article className={styles.sheet} data-paper={paperManner(sheet)}>
      <SheetHead sheet={sheet} />
      {sheet.inspectorFirst && (
        <p className={styles.stop}>
          A qualified inspector sees this bead before anything is changed or repaired.
        </p>
      )}
      <div className={styles.bead}>
        <Photos sheet={sheet} />
        <HowRun sheet={sheet} />
        <Marks sheet={sheet} />
        <Widths sheet={sheet} />
      </div>
      <div className={styles.judged}>
        <Change sheet={sheet} />
        <Causes sheet={sheet} />
        <VerdictPart sheet={sheet} />
      </div>
      {sheet.photos.map(
        (photo, i) =>
          photo.section && (
            <SectionPart key={photo.sha256} photo={photo} section={photo.section} number={i + 1} />
          ),
      )}
      {sheet.note && (
        <section className={styles.note}>
          <h2>Note</h2>
          <p>{sheet.note}</p>
        </section>
      )}
      <footer className={styles.foot}>
        {sheet.cautions.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </footer>
    </article>
  );
}

function SheetHead({ sheet }: { sheet: SheetDocument }) {
  return (
    <header className={styles.head}>
      <div>
        <p className={styles.kicker}>
          Bead {sheet.number}, revision {sheet.revision} · {sheet.day}
        </p>
        <h1>{sheet.title}</h1>
        {sheet.welder && <p>Run by {sheet.welder}</p>}
      </div>
      {sheet.verdict && (
        <div className={styles.verdictBox}>
          <p className={styles.word}>{sheet.verdict.word}</p>
          <p>{sheet.verdict.criteria}</p>
          {sheet.verdict.checkYourCopy && (
            <p>
              <strong>Check your copy.</strong>
            </p>
          )}
        </div>
      )}
    </header>
  );
}

function HowRun({ sheet }: { sheet: SheetDocument }) {
  return (
    <section>
      <h2>How it was run</h2>
      {sheet.setup.length === 0 ? (
        <p>Not recorded.</p>
      ) : (
        <dl className={styles.setup}>
          {sheet.setup.map(({ label, value }) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
      )}
      {sheet.setupFindings.length > 0 && (
        <ul className={styles.findings}>
          {sheet.setupFindings.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
    </section>
  );
}

function Change({ sheet }: { sheet: SheetDocument }) {
  if (!sheet.change) return null;
  return (
    <div className={`${styles.wide} ${styles.change}`}>
      <AnswerCard answer={sheet.change} look="paper">
        {sheet.nextChanges.length > 0 && (
          <p>Only if that does not cure it: {sheet.nextChanges.join(" Then: ")}</p>
        )}
      </AnswerCard>
    </div>
  );
}

function Photos({ sheet }: { sheet: SheetDocument }) {
  if (sheet.photos.length === 0) return null;
  return (
    <div className={styles.photos} data-count={Math.min(sheet.photos.length, 2)}>
      {sheet.photos.map((photo, index) => (
        <figure key={photo.sha256}>
          <div
            className={styles.frame}
            style={{
              aspectRatio: `${photo.widthPx} / ${photo.heightPx}`,
              maxWidth: `calc(var(--photo-height) * ${photo.widthPx / photo.heightPx})`,
            }}
          >
            {index === 0 && (
              // Seen at once, while the one that is sharp on paper is fetched; that lies over it.
              <img src={`/api/photos/${photo.sha256}/thumb`} alt="" fetchPriority="high" />
            )}
            <picture>
              <source media={READ_ON_PHONE} srcSet={`/api/photos/${photo.sha256}/page`} />
              <img
                src={`/api/photos/${photo.sha256}/small`}
                alt={`Photo ${index + 1} of the bead, ${photo.role}`}
              />
            </picture>
            <MarkOverlay
              scene={printedScene(photo)}
              widthPx={photo.widthPx}
              heightPx={photo.heightPx}
              acrossUnits={ACROSS}
            />
          </div>
          <figcaption>
            Photo {index + 1}, {photo.role}. {photo.hasScale ? "Scale set." : "No scale."}
            <span className={styles.onScreen}>
              <SharePhoto photo={photo} name={`${sheet.title}, photo ${index + 1}`} />
            </span>
          </figcaption>
        </figure>
      ))}
    </div>
  );
}

function Marks({ sheet }: { sheet: SheetDocument }) {
  return (
    <section className={styles.wide}>
      <h2>What is there</h2>
      {sheet.marks.length === 0 ? (
        <p>Nothing marked.</p>
      ) : (
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">Mark</th>
              <th scope="col">Imperfection</th>
              <th scope="col">ISO 6520-1</th>
              <th scope="col">Where</th>
              <th scope="col">Size</th>
            </tr>
          </thead>
          <tbody>
            {sheet.marks.map((mark) => (
              <tr key={`${mark.photo} ${mark.numbers}`}>
                <td>{sheet.photos.length > 1 ? `${mark.photo}: ${mark.numbers}` : mark.numbers}</td>
                <td>
                  {mark.name}
                  {mark.note && <small> {mark.note}</small>}
                </td>
                <td>{mark.iso6520}</td>
                <td>{mark.place}</td>
                <td className={styles.size}>{mark.size}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

/** Of each photo on which toes were accepted. */
function Widths({ sheet: { photos } }: { sheet: SheetDocument }) {
  return photos.map(
    ({ sha256, width }, i) =>
      width && (
        <section key={sha256} className={styles.wide}>
          <h2>Width of the bead{photos.length > 1 ? ` on photo ${i + 1}` : ""}</h2>
          <dl className={styles.setup}>
            {width.map(({ label, value }) => (
              <div key={label}>
                <dt>{label}</dt>
                <dd>{value}</dd>
              </div>
            ))}
          </dl>
          <p className={styles.small}>{WIDTH_NOTE}</p>
        </section>
      ),
  );
}

function Causes({ sheet: { causes, causeless, origin } }: { sheet: SheetDocument }) {
  return (
    <section>
      <h2>Likely causes</h2>
      {causeless.map((line) => (
        <p key={line}>{line}</p>
      ))}
      <ol className={styles.causes}>
        {causes.map((cause) => (
          <li key={cause.name}>
            <strong>{cause.name}</strong>: {cause.chance}
            <span className={styles.bar} aria-hidden="true">
              <span style={{ width: `${Math.max(1, cause.probability * 100)}%` }} />
            </span>
            {cause.speaksFor.map((line) => (
              <p key={line}>+ {line}</p>
            ))}
            {cause.speaksAgainst.map((line) => (
              <p key={line}>− {line}</p>
            ))}
          </li>
        ))}
      </ol>
      {origin && <p className={styles.small}>{origin}</p>}
    </section>
  );
}

function VerdictPart({ sheet }: { sheet: SheetDocument }) {
  if (!sheet.verdict) {
    return (
      <section>
        <h2>Verdict</h2>
        <p>No criteria chosen.</p>
      </section>
    );
  }
  const { verdict } = sheet;
  return (
    <section className={styles.verdict}>
      <h2>Verdict: {verdict.word}</h2>
      <p>{verdict.long}</p>
      {verdict.checkYourCopy && <p>{CHECK_YOUR_COPY}</p>}
      {verdict.contradictions.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {verdict.notCarried && <p>{verdict.notCarried}</p>}
      {verdict.unused && <p>{verdict.unused}</p>}
      {verdict.missing.length > 0 && <p>Missing: {verdict.missing.join("; ")}.</p>}
      {verdict.notLookedFor.length > 0 && <p>Not looked for: {verdict.notLookedFor.join(", ")}.</p>}
      <table className={`${styles.table} ${styles.clauses}`}>
        <thead>
          <tr>
            <th scope="col">Result</th>
            <th scope="col">Clause</th>
          </tr>
        </thead>
        <tbody>
          {verdict.clauses.map((row) => (
            <tr key={`${row.clause} ${row.title}`}>
              <td>
                <strong>{row.result}</strong>
              </td>
              <td>
                {row.title}: {row.detail} <small>{row.clause}</small>
                {row.checkYourCopy && <small> Check your copy.</small>}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
