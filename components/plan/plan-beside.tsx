"use client";

import { useMemo, useState, type ReactNode } from "react";
import { page, Panel } from "@/components/ui";
import type { Source } from "@/lib/base";
import {
  compare,
  givenText,
  knobReason,
  knobText,
  legsAtPaces,
  planIssueSentence,
  planRun,
  plateRange,
  platesSentence,
  secondsFor25mm,
  type PlanAsk,
  type Variant,
} from "@/lib/plan";
import { answerWord, showReading, sourceDoubt, valueInText } from "@/lib/setup";
import { formatQuantity, type UnitPreferences } from "@/lib/units";
import styles from "./plan.module.css";

interface Props {
  ask: PlanAsk;
  units: UnitPreferences;
  onTake: (ask: PlanAsk) => void;
}

/** What else can be asked of the same job; each part is worked out when it is opened. */
export function PlanBeside({ ask, units, onTake }: Props) {
  const planned = useMemo(() => planRun(ask), [ask]);
  if (!planned.ok && planned.issues.some(({ code }) => code === "field-needed")) return null;
  return (
    <Panel title="Asked the other way round" tone="blue">
      {planned.ok && (
        <Opened title="Why these numbers, and where from">{() => <Grounds ask={ask} units={units} />}</Opened>
      )}
      <Opened title="Plates this wire and socket carry">{() => <Plates ask={ask} units={units} />}</Opened>
      {planned.ok && <Opened title="What leg at which pace">{() => <Legs ask={ask} units={units} />}</Opened>}
      <Opened title="By socket, gas and wire">
        {() => <Compared ask={ask} units={units} onTake={onTake} />}
      </Opened>
      <p className={page.note}>
        Starting points for scrap, never a procedure: the wire’s data sheet and the qualified procedure
        govern.
      </p>
    </Panel>
  );
}

function Opened({ title, children }: { title: string; children: () => ReactNode }) {
  const [open, setOpen] = useState(false);
  return (
    <details className={page.details} onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>{title}</summary>
      {open && children()}
    </details>
  );
}

type Asked = Omit<Props, "onTake">;

function Grounds({ ask, units }: Asked) {
  const planned = useMemo(() => planRun(ask), [ask]);
  if (!planned.ok) return null;
  return (
    <ul className={styles.grounds}>
      {planned.value.knobs.map((knob) => {
        const { label, value, range } = knobText(knob, units);
        const doubt = sourceDoubt(knob.source);
        return (
          <li key={knob.field}>
            <strong>
              {label} {value}
            </strong>
            : {knobReason(knob)}; turn it from {range}.{" "}
            <span className={page.note}>{[documentOf(knob.source), doubt].filter(Boolean).join("; ")}</span>
          </li>
        );
      })}
    </ul>
  );
}

/** What rests on no document says so by its doubt. */
const documentOf = ({ document, confidence }: Source): string =>
  confidence === "own-estimate" || confidence === "common-practice" ? "" : document;

function Plates({ ask, units }: Asked) {
  const range = useMemo(() => plateRange(ask), [ask]);
  return (
    <>
      <p className={page.sum}>{platesSentence(range, units)}</p>
      {range.thinner && <p>Thinner: {planIssueSentence(range.thinner, units)}</p>}
      {range.thicker && <p>Thicker: {planIssueSentence(range.thicker, units)}</p>}
    </>
  );
}

function Legs({ ask, units }: Asked) {
  const legs = useMemo(() => {
    const planned = planRun(ask);
    return planned.ok ? legsAtPaces(planned.value.setup) : [];
  }, [ask]);
  const show = showReading(units);
  if (legs.length === 0) return <p>This joint has no leg.</p>;
  return (
    <table className={page.plainTable}>
      <thead>
        <tr>
          <th scope="col">Travel</th>
          <th scope="col">For 25 mm</th>
          <th scope="col">Leg of one pass</th>
        </tr>
      </thead>
      <tbody>
        {legs.map(({ travelMmPerMin, leg }) => (
          <tr key={travelMmPerMin}>
            <td>{show("travelSpeedMmPerMin", travelMmPerMin)}</td>
            <td>{formatQuantity("seconds", secondsFor25mm(travelMmPerMin), "metric")}</td>
            <td>{legText(leg, units)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** With as many places as its error deserves. */
function legText(
  { value, low, high }: ReturnType<typeof legsAtPaces>[number]["leg"],
  units: UnitPreferences,
) {
  const said = givenText({ code: "leg", value, low, high, unit: "mm", source: noSource }, units);
  return said.range ?? said.value;
}
const noSource: Source = { document: "", confidence: "derived" };

function Compared({ ask, units, onTake }: Props) {
  const tables = useMemo(() => compare(ask), [ask]);
  const name = (field: "inputPower" | "gas") => (one: PlanAsk) =>
    one[field] === null ? "not known" : answerWord(field, one[field]);
  const wire = (one: PlanAsk) =>
    `${one.electrodeClass} ${valueInText("electrodeDiameterMm", one.electrodeDiameterMm!, units)}`;
  const shared = { units, onTake };
  return (
    <div className={styles.tables}>
      <Variants title="Socket" variants={tables.inputs} name={name("inputPower")} {...shared} />
      {tables.gases.length > 0 && (
        <Variants title="Gas" variants={tables.gases} name={name("gas")} {...shared} />
      )}
      <Variants title="Wire" variants={tables.wires} name={wire} {...shared} />
    </div>
  );
}

function Variants({
  title,
  variants,
  name,
  units,
  onTake,
}: {
  title: string;
  variants: readonly Variant[];
  name: (ask: PlanAsk) => string;
  units: UnitPreferences;
  onTake: (ask: PlanAsk) => void;
}) {
  const show = showReading(units);
  return (
    <div className={page.scroll}>
      <table className={page.plainTable}>
        <thead>
          <tr>
            <th scope="col">{title}</th>
            <th scope="col">Feed</th>
            <th scope="col">Volts</th>
            <th scope="col">Current</th>
            <th scope="col">Size</th>
            <th scope="col">Metal</th>
            <th scope="col">Arc time</th>
          </tr>
        </thead>
        <tbody>
          {variants.map(({ ask, run, issue }) => (
            <tr key={name(ask)}>
              <th scope="row">
                <button type="button" className={styles.take} onClick={() => onTake(ask)}>
                  {name(ask)}
                </button>
              </th>
              {run ? (
                <>
                  <td>{show("wireFeedMPerMin", run.setup.wireFeedMPerMin!)}</td>
                  <td>{show("volts", run.setup.volts!)}</td>
                  {["amps", sizeCode(run), "deposition", "arc-time"].map((code) => (
                    <td key={code}>{cell(run, code, units)}</td>
                  ))}
                </>
              ) : (
                <td colSpan={6}>{issue && planIssueSentence(issue, units)}</td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

type Run = NonNullable<Variant["run"]>;

const sizeCode = ({ gives }: Run): string =>
  ["leg-in-all", "leg", "bead-width"].find((code) => gives.some((one) => one.code === code)) ?? "passes";

function cell({ gives, passes }: Run, code: string, units: UnitPreferences): string {
  const one = gives.find((each) => each.code === code);
  if (one === undefined) return "";
  const { value } = givenText(one, units);
  if (code === "passes") return `${value} passes`;
  return code === "leg-in-all" ? `${value} in ${passes}` : value;
}
