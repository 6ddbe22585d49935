"use client";

import { useState } from "react";
import { RangeFields, useTyped } from "@/components/setup";
import { Button, Choice, Field, form, MakeFoot, page, Panel } from "@/components/ui";
import type { Answer } from "@/lib/base";
import { fieldLabel, showReading, spanText, type RunSetup } from "@/lib/setup";
import {
  MOST_BEADS,
  responseNames,
  responseRows,
  type Aim,
  type ResponseName,
  type TrialAsk,
  type TrialKnob,
  type Way,
} from "@/lib/trials";
import { fieldText, parseLength, parsePercent, type UnitPreferences } from "@/lib/units";
import styles from "./trials.module.css";

/** A knob that may be turned, how far, and where a sensible range would lie. */
interface KnobOffer {
  readonly field: TrialKnob;
  readonly low: number;
  readonly high: number;
}

const wayWords: Readonly<Record<Way, string>> = {
  surface: "A series laid out beforehand, ends and middle (steadiest)",
  seek: "One bead at a time, each proposed by those before (fewest beads)",
  factorial: "Only the ends, with the middle repeated (does the knob do anything?)",
};
const wantWords = {
  least: "as small as possible",
  most: "as large as possible",
  target: "near a size",
} as const;
const wayOrder = ["surface", "seek", "factorial"] as const;
const wants = ["target", "least", "most"] as const;
const fewest = (way: Way, knobs: number): number =>
  way === "seek" ? 3 : way === "factorial" ? 2 ** knobs + 1 : knobs === 1 ? 3 : 9;
const usual = (way: Way, knobs: number): number => (knobs === 1 ? 8 : way === "factorial" ? 7 : 12);

interface Props {
  base: RunSetup;
  title: string;
  offers: readonly KnobOffer[];
  units: UnitPreferences;
  onMake: (ask: TrialAsk) => Promise<Answer<null>>;
}

interface Asked {
  readonly title: string;
  readonly knobs: readonly {
    readonly field: TrialKnob;
    readonly low: number | null;
    readonly high: number | null;
  }[];
  readonly way: Way;
  readonly budget: number;
  readonly aim: Aim;
  readonly noise: number | null;
}

/** What is asked for as a trial is made of it; null while something is open. */
function askOf({ knobs, noise, ...asked }: Asked, base: RunSetup, units: UnitPreferences): TrialAsk | null {
  const known = knobs.flatMap(({ field, low, high }) =>
    low === null || high === null ? [] : [{ field, low, high }],
  );
  if (known.length === 0 || known.length < knobs.length || noise === null) return null;
  return {
    ...asked,
    base,
    knobs: known,
    noise,
    budget: Math.max(asked.budget, fewest(asked.way, known.length)),
    dials: units.length === "in" ? "inch" : "metric",
    seed: Math.floor(Math.random() * 2 ** 31),
  };
}

/** Which knobs, how far, how many beads, and what is wanted of them. */
export function TrialForm({ base, title, offers, units, onMake }: Props) {
  const [asked, setAsked] = useState<Asked>({
    title,
    knobs: offers.slice(0, 1),
    way: "surface",
    budget: usual("surface", 1),
    aim: { response: "leg", want: "target", target: base.targetLegMm ?? 6 },
    noise: responseRows.leg.usualNoise,
  });
  const change = (part: Partial<Asked>) => setAsked({ ...asked, ...part });
  const isReady = askOf(asked, base, units) !== null;
  return (
    <div className={form.form}>
      <Field label="Title">
        {(ids) => (
          <input
            {...ids}
            value={asked.title}
            maxLength={120}
            onChange={({ target }) => change({ title: target.value })}
          />
        )}
      </Field>
      <Panel title="Which knob, or which two" tone="straw">
        <Knobs asked={asked} offers={offers} units={units} onChange={change} />
      </Panel>
      <Panel title="What is wanted" tone="bronze">
        <AimFields aim={asked.aim} units={units} onChange={(aim) => change(withAim(asked, aim))} />
        <Noise response={asked.aim.response} noise={asked.noise} onChange={(noise) => change({ noise })} />
      </Panel>
      <Panel title="How" tone="purple">
        <Series asked={asked} onChange={change} />
      </Panel>
      <MakeFoot label="Make the trial" ready={isReady} onMake={() => onMake(askOf(asked, base, units)!)} />
    </div>
  );
}

/** Another response scatters otherwise. */
const withAim = (asked: Asked, aim: Aim): Partial<Asked> =>
  aim.response === asked.aim.response ? { aim } : { aim, noise: responseRows[aim.response].usualNoise };

interface PartProps {
  asked: Asked;
  onChange: (part: Partial<Asked>) => void;
}

function Knobs({
  asked: { knobs, way },
  offers,
  units,
  onChange,
}: PartProps & Pick<Props, "offers" | "units">) {
  const toggle = (offer: KnobOffer) => {
    const has = knobs.some(({ field }) => field === offer.field);
    const next = has ? knobs.filter(({ field }) => field !== offer.field) : [...knobs, offer].slice(-2);
    onChange({ knobs: next, budget: usual(way, next.length || 1) });
  };
  return (
    <>
      {offers.length === 0 && <p>No knob of this set-up may be turned inside the wire’s rows.</p>}
      <div className={styles.knobs} role="group" aria-label="Knobs to vary">
        {offers.map((offer) => (
          <Button
            key={offer.field}
            aria-pressed={knobs.some(({ field }) => field === offer.field)}
            onClick={() => toggle(offer)}
          >
            {fieldLabel(offer.field)}
          </Button>
        ))}
      </div>
      {knobs.map((knob) => (
        <RangeFields
          key={knob.field}
          field={knob.field}
          range={knob}
          units={units}
          hint={roomText(
            offers.find(({ field }) => field === knob.field)!,
            units,
          )}
          onChange={(range) =>
            onChange({
              knobs: knobs.map((one) => (one.field === knob.field ? { ...one, ...range } : one)),
            })
          }
        />
      ))}
      <p className={page.note}>
        Wide ranges show more. Nothing is run outside the wire’s rows, whatever is typed here.
      </p>
    </>
  );
}

function Series({ asked: { way, budget, knobs }, onChange }: PartProps) {
  const count = knobs.length || 1;
  return (
    <>
      <Field label="The series">
        {(ids) => (
          <Choice
            {...ids}
            value={way}
            options={wayOrder}
            nameOf={(one) => wayWords[one]}
            onChoose={(next) => onChange({ way: next, budget: usual(next, count) })}
          />
        )}
      </Field>
      <Field
        label="Beads"
        hint={`At least ${fewest(way, count)}. Run them in the order given: it is mixed, so that a machine that warms up does not look like the knob.`}
      >
        {(ids) => (
          <input
            {...ids}
            type="number"
            min={fewest(way, count)}
            max={MOST_BEADS}
            value={budget}
            onChange={({ target }) => onChange({ budget: Number(target.value) })}
          />
        )}
      </Field>
    </>
  );
}

function roomText({ field, low, high }: KnobOffer, units: UnitPreferences): string {
  const show = showReading(units);
  return `The rows leave ${spanText(show(field, low), show(field, high))}.`;
}

function AimFields({
  aim,
  units,
  onChange,
}: {
  aim: Aim;
  units: UnitPreferences;
  onChange: (aim: Aim) => void;
}) {
  const { unit } = responseRows[aim.response];
  const isLength = unit === "mm";
  const typed = useTyped({
    value: aim.target,
    unit: isLength ? units.length : unit,
    write: (stored) => (isLength ? fieldText("length", stored, units) : String(stored ?? "")),
    parse: (text) =>
      isLength
        ? parseLength(text, { default: units.length, max: 1000 })
        : parsePercent(text, { max: 1000, allowZero: true }),
    store: (target) => target !== null && onChange({ ...aim, target }),
  });
  return (
    <>
      <Field label="Measured on each bead">
        {(ids) => (
          <Choice
            {...ids}
            value={aim.response}
            options={responseNames}
            nameOf={(name) => responseRows[name].label}
            onChoose={(response) => onChange(aimFor(response, aim))}
          />
        )}
      </Field>
      <Field label="It should be">
        {(ids) => (
          <Choice
            {...ids}
            value={aim.want}
            options={wants}
            nameOf={(want) => wantWords[want]}
            onChoose={(want) =>
              onChange({ ...aim, want, target: want === "target" ? (aim.target ?? 6) : null })
            }
          />
        )}
      </Field>
      {aim.want === "target" && (
        <Field label={`The size (${isLength ? units.length : unit || "count"})`} error={typed.error}>
          {(ids) => (
            <input
              {...ids}
              inputMode="decimal"
              autoComplete="off"
              value={typed.text}
              onChange={({ target }) => typed.type(target.value)}
              onBlur={typed.leave}
            />
          )}
        </Field>
      )}
    </>
  );
}

function aimFor(response: ResponseName, { target }: Aim): Aim {
  const { want } = responseRows[response];
  return { response, want, target: want === "target" ? (target ?? 6) : null };
}

function Noise({
  response,
  noise,
  onChange,
}: {
  response: ResponseName;
  noise: number | null;
  onChange: (noise: number | null) => void;
}) {
  const { unit } = responseRows[response];
  return (
    <Field
      label={`How far two beads of one setting usually lie apart${unit ? ` (${unit})` : ""}`}
      hint="One standard deviation; the figure here is our own estimate. If it is set too small, chance looks like a result."
    >
      {(ids) => (
        <input
          {...ids}
          type="number"
          step="any"
          min="0"
          value={noise ?? ""}
          onChange={({ target }) =>
            onChange(target.value === "" || !(Number(target.value) > 0) ? null : Number(target.value))
          }
        />
      )}
    </Field>
  );
}
