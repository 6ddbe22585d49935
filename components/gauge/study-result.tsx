import { Panel } from "@/components/ui";
import {
  componentNames,
  componentSentences,
  studyFigures,
  studySize,
  studyStanding,
  studyWords,
  type CellUnit,
  type GaugeStudy,
} from "@/lib/gauge";
import { formatQuantity } from "@/lib/units";
import styles from "./gauge.module.css";
import { StudyChart } from "./study-chart";

const tones = { good: "ok", "may-do": "straw", poor: "danger", "no-spread": "straw" } as const;
const percent = (share: number | null): string =>
  share === null ? "" : formatQuantity("share", share, "metric");

/** What came of a study: in words, as a picture, as a table. */
export function StudyResult({ study, lengths }: { study: GaugeStudy; lengths: "mm" | "in" }) {
  const figures = studyFigures(study);
  const { anova, components, lines } = figures;
  const shown: CellUnit = study.unit === "deg" ? "deg" : lengths;
  const size = (value: number) => studySize(value, shown);
  const withTolerance = study.tolerance !== null;
  return (
    <Panel title={`${study.what}, ${study.on}`} tone={tones[studyStanding(figures)]}>
      <ul className={styles.words}>
        {studyWords(study, figures, lengths).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <StudyChart study={study} shown={shown} />
      <div className={styles.scroll} role="region" aria-label="Where the spread comes from" tabIndex={0}>
        <table>
          <caption className="visually-hidden">Where the spread comes from</caption>
          <thead>
            <tr>
              <th scope="col">Spread</th>
              <th scope="col">Standard deviation</th>
              <th scope="col">95 %</th>
              <th scope="col">Of all</th>
              {withTolerance && <th scope="col">Six of it, of the tolerance</th>}
            </tr>
          </thead>
          <tbody>
            {lines.map(({ id, sigma, bounds, ofStudy, ofTolerance }) => (
              <tr key={id}>
                <th scope="row">
                  {componentNames[id]}
                  <span className={styles.small}>{componentSentences[id]}</span>
                </th>
                <td>{size(sigma)}</td>
                <td>{bounds ? `${size(bounds.low)} to ${size(bounds.high)}` : "not given"}</td>
                <td>{percent(ofStudy)}</td>
                {withTolerance && <td>{percent(ofTolerance)}</td>}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p>
        {study.people.length} people, {study.parts.length} parts, {anova.sizes.tries} tries each, by analysis
        of variance. People by parts:{" "}
        {anova.f === null ? "no spread" : `F ${formatQuantity("statistic", anova.f, "metric")}`}
        {anova.p !== null && `, p ${formatQuantity("probability", anova.p, "metric")}`}
        {components.pooled ? "; counted with repeatability, as p is above 0.25." : "; kept apart."} Shares are
        of standard deviations, so they do not add up. The borders of a tenth, three tenths and five groups
        are usual (AIAG, Measurement Systems Analysis; from memory), no limit of a welding code.
      </p>
    </Panel>
  );
}
