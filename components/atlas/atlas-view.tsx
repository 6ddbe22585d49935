import Link from "next/link";
import { page, Panel } from "@/components/ui";
import { pictureAt, severities, severityWords, type AtlasEntry } from "@/lib/atlas";
import { processWords } from "@/lib/report";
import { processes, type ImperfectionId, type Process } from "@/lib/trade";
import styles from "./atlas-view.module.css";
import { CloseUp } from "./close-up";
import { LimitTables } from "./limit-tables";
import { TellApartCard } from "./tell-apart-card";
import { UsualCauses } from "./usual-causes";

/** The page of one imperfection: what it looks like, what it is taken for, where it comes from, what the codes say. */
export function AtlasView({ entry, process }: { entry: AtlasEntry; process: Process | null }) {
  const { imperfection, firstAct, whoSees } = entry;
  const { id, name, alsoCalled, look, iso6520, iso6520InButt, inspectorFirst } = imperfection;
  return (
    <>
      <header className={styles.head}>
        <h1>{name}</h1>
        {alsoCalled.length > 0 && <p className={styles.also}>also: {alsoCalled.join(", ")}</p>}
        <p className={styles.look}>{look}</p>
      </header>
      <Pictures id={id} />
      <div className={styles.first}>
        <Panel title="First" tone={inspectorFirst ? "danger" : "straw"}>
          <p className={styles.act}>{firstAct}</p>
        </Panel>
        <Panel title="Who must see it" tone={inspectorFirst ? "danger" : "plain"}>
          <p>{whoSees}</p>
        </Panel>
      </div>
      <section className={styles.part} aria-labelledby="apart">
        <h2 id="apart">How to tell it</h2>
        <div className={styles.cards}>
          {entry.lookAlikes.map((apart) => (
            <TellApartCard
              key={apart.other}
              {...{ id, apart }}
              act={(one) => (one === id ? null : <AtlasLink id={one} process={process} />)}
            />
          ))}
        </div>
      </section>
      <section className={styles.part} aria-labelledby="causes">
        <h2 id="causes">What usually causes it</h2>
        <Processes id={id} process={process} />
        <UsualCauses entry={entry} process={process} />
      </section>
      <section className={styles.part} aria-labelledby="limits">
        <h2 id="limits">What the codes say</h2>
        <LimitTables limits={entry.limits} />
      </section>
      <details className={styles.number}>
        <summary>Number of the standard</summary>
        <p>{isoWords(iso6520, iso6520InButt)}</p>
      </details>
    </>
  );
}

function isoWords(number: string | null, inButt: string | null): string {
  if (number === null) return "ISO 6520-1 has no number of its own for it.";
  const butt = inButt === null ? "" : ` in a fillet, ${inButt} in a butt weld`;
  return `ISO 6520-1: ${number}${butt}. Check your copy.`;
}

function AtlasLink({ id, process }: { id: ImperfectionId; process: Process | null }) {
  return (
    <Link href={atlasAddress(id, process)} className={page.link} prefetch={false}>
      Open this one
    </Link>
  );
}

/** Where the page of an imperfection is, told for a process. */
export const atlasAddress = (id: ImperfectionId, process: Process | null): string =>
  `/atlas/${id}${process === null ? "" : `?process=${process}`}`;

function Pictures({ id }: { id: ImperfectionId }) {
  return (
    <div>
      <ul className={styles.pictures} tabIndex={0} aria-label="At three severities">
        {severities.map((severity) => (
          <li key={severity}>
            <figure>
              <CloseUp picture={pictureAt(id, severity)} eager />
              <figcaption>{severityWords[severity]}</figcaption>
            </figure>
          </li>
        ))}
      </ul>
      <p className={styles.rendered}>
        Rendered, not photographed: the same place at three severities. How bad is too bad, the limits below
        say.
      </p>
    </div>
  );
}

function Processes({ id, process }: { id: ImperfectionId; process: Process | null }) {
  const choice = (one: Process | null, words: string) => (
    <Link
      key={words}
      href={`${atlasAddress(id, one)}#causes`}
      className={styles.process}
      aria-current={one === process ? "true" : undefined}
      prefetch={false}
      scroll={false}
    >
      {words}
    </Link>
  );
  return (
    <nav className={styles.processes} aria-label="Process">
      {choice(null, "Any process")}
      {processes.map((one) => choice(one, processWords[one]))}
    </nav>
  );
}
