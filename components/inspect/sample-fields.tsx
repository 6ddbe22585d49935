"use client";

import { useState } from "react";
import { Button, Choice, Field } from "@/components/ui";
import {
  drawSample,
  planText,
  sampleLots,
  type InspectionDraft,
  type JobWeld,
  type Sample,
  type SampleTake,
} from "@/lib/inspect";
import { TextField } from "./fields";
import styles from "./inspect.module.css";

const lotNames: Readonly<Record<Sample["lot"], string>> = {
  job: "of all welds",
  welder: "of each welder’s",
  part: "of each part’s",
};
const kinds = ["share", "count"] as const;

const takeOf = (kind: SampleTake["kind"], text: string): SampleTake | null => {
  const number = Number(text.replace(",", "."));
  if (kind === "share") return number > 0 && number <= 100 ? { kind, percent: number } : null;
  return Number.isInteger(number) && number > 0 && number <= 400 ? { kind, count: number } : null;
};

/** Sixty-four bits of chance as text. */
function freshSeed(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(8));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** Where not all welds are looked at: how many, of what, why; and which ones chance chose. */
export function SampleFields({
  content,
  welds,
  change,
}: {
  readonly content: InspectionDraft;
  readonly welds: readonly JobWeld[];
  readonly change: (part: Partial<InspectionDraft>) => void;
}) {
  const { sample } = content;
  const plan = usePlan(content, welds, change);
  const numbers = (ids: readonly string[]) =>
    ids.map((id) => welds.find((weld) => weld.id === id)?.number ?? id).join(", ");
  if (welds.length < 2) return null;
  return (
    <details open={sample ? true : undefined}>
      <summary>Look at a sample of the welds</summary>
      <fieldset className={styles.item}>
        <legend>Sample</legend>
        <div className={styles.grid}>
          <Field label="How many" error={plan.error}>
            {(ids) => (
              <div className={styles.extent}>
                <input
                  {...ids}
                  inputMode="decimal"
                  autoComplete="off"
                  value={plan.text}
                  onChange={({ target }) => plan.setText(target.value)}
                />
                <Choice
                  aria-label="Share or number"
                  value={plan.kind}
                  options={kinds}
                  nameOf={(one) => (one === "share" ? "%" : "welds")}
                  onChoose={plan.setKind}
                />
              </div>
            )}
          </Field>
          <Field label="Of what">
            {(ids) => (
              <Choice
                {...ids}
                value={plan.lot}
                options={sampleLots}
                nameOf={(one) => lotNames[one]}
                onChoose={plan.setLot}
              />
            )}
          </Field>
          <TextField
            label="Why a sample"
            hint="the clause or plan that allows it"
            value={plan.why}
            most={200}
            onChange={plan.setWhy}
          />
        </div>
        <Button onClick={plan.draw}>{sample ? "Draw anew" : "Draw the sample"}</Button>
        {sample && (
          <>
            <p role="status">
              {planText(sample.take, sample.lot)}, drawn out of {sample.from.length}:{" "}
              <strong>{numbers(sample.chosen)}</strong>. Draw {sample.draws}, seed {sample.seed}. It goes on
              the record.
            </p>
            <Button onClick={() => change({ sample: null })}>No sample: all that is ticked</Button>
          </>
        )}
      </fieldset>
    </details>
  );
}

function usePlan(
  { sample, welds: looked }: InspectionDraft,
  welds: readonly JobWeld[],
  change: (part: Partial<InspectionDraft>) => void,
) {
  const take = sample?.take;
  const [kind, setKind] = useState<SampleTake["kind"]>(take?.kind ?? "share");
  const [text, setText] = useState(take ? String(take.kind === "share" ? take.percent : take.count) : "");
  const [lot, setLot] = useState<Sample["lot"]>(sample?.lot ?? "job");
  const [why, setWhy] = useState(sample?.why ?? "");
  const [error, setError] = useState<string | null>(null);
  const draw = () => {
    const wanted = takeOf(kind, text);
    setError(wanted ? null : "Type how many: a share of 1 to 100 %, or a number of welds.");
    if (!wanted) return;
    const seed = freshSeed();
    const chosen = [...drawSample(welds, wanted, lot, seed)];
    const drawn = { take: wanted, lot, seed, draws: (sample?.draws ?? 0) + 1, why };
    change({
      sample: { ...drawn, from: welds.map(({ id }) => id), chosen },
      // What was said of a weld that stays is kept.
      welds: chosen.map(
        (weldId) => looked.find((one) => one.weldId === weldId) ?? { weldId, seen: null, seenNote: "" },
      ),
    });
  };
  return { kind, setKind, text, setText, lot, setLot, why, setWhy, error, draw };
}
