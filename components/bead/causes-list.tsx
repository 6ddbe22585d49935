"use client";

import { useState } from "react";
import { needsCheck } from "@/lib/base";
import type { RankedCause, WhyItem } from "@/lib/diagnose";
import { amountText, changeText, chanceWords, confidenceWords } from "@/lib/report";
import type { UnitPreferences } from "@/lib/units";
import styles from "./causes-panel.module.css";
import { useInIdle } from "./use-in-idle";

const SHOWN = 5;

/** The ranking, the likeliest open with its reasons. */
export function CausesList({ causes, units }: { causes: readonly RankedCause[]; units: UnitPreferences }) {
  // Opening the panel shows everything at once; what comes with later marks follows their frame.
  const [openedWith] = useState(causes);
  const atOnce = causes === openedWith;
  const likely = causes.slice(0, SHOWN);
  const rest = causes.slice(SHOWN);
  return (
    <section className={styles.causes} aria-label="Likely causes">
      <h3>Likely causes</h3>
      <ol data-testid="causes">
        {likely.map((cause) => (
          <CauseRow key={cause.id} cause={cause} units={units} open={cause === likely[0]} atOnce={atOnce} />
        ))}
      </ol>
      {rest.length > 0 && (
        <details className={styles.rest}>
          <summary>{rest.length} less likely ones</summary>
          <ol>
            {rest.map((cause) => (
              <CauseRow key={cause.id} cause={cause} units={units} open={false} atOnce={atOnce} />
            ))}
          </ol>
        </details>
      )}
      <p className={styles.small}>
        The bars weigh published lists of causes against what is marked and recorded. They rank; they are not
        measured frequencies. Several causes may hold at once, so the percentages need not add up to 100.
      </p>
    </section>
  );
}

interface RowProps {
  readonly cause: RankedCause;
  readonly units: UnitPreferences;
  readonly open: boolean;
  readonly atOnce: boolean;
}

function CauseRow({ cause, units, open, atOnce }: RowProps) {
  const [opened, setOpened] = useState(open);
  return (
    <li className={styles.cause} data-cause={cause.id}>
      <details open={open} onToggle={(event) => setOpened(event.currentTarget.open)}>
        <summary>
          <span className={styles.name}>{cause.name}</span>
          <span className={styles.chance}>{chanceWords(cause.probability)}</span>
          <meter
            className="visually-hidden"
            min={0}
            max={1}
            value={cause.probability}
            aria-label={`Weight of ${cause.name}`}
          />
          <span className={styles.bar} aria-hidden="true">
            <span style={{ width: `${Math.max(1, cause.probability * 100)}%` }} />
          </span>
        </summary>
        <p>{cause.sentence}</p>
        {cause.shop && cause.shop.confirmed > 0 && (
          <p className={styles.shop}>
            {cause.shop.confirmed} of {cause.shop.total} confirmed here
          </p>
        )}
        <Reasons cause={cause} units={units} wanted={open || opened} atOnce={atOnce} />
        <p>
          <strong>Correction:</strong> {cause.change.sentence} {changeText(cause.change, units)}
        </p>
      </details>
    </li>
  );
}

/** Reasons take longer than the ranking: they follow it, and the last ones stand until then, so that nothing jumps. */
function Reasons({ cause, units, wanted, atOnce }: Omit<RowProps, "open"> & { readonly wanted: boolean }) {
  const why = useInIdle(cause, wanted, () => cause.why, atOnce);
  if (why === null && !wanted) return null;
  if (why === null) return <p className={styles.waiting} aria-busy="true" aria-label="Reasons follow" />;
  if (why.length === 0) {
    return (
      <p className={styles.small}>
        Nothing recorded speaks for or against it; this is only how common it is.
      </p>
    );
  }
  return (
    <>
      <WhyList
        title="Speaks for it"
        items={why.filter(({ direction }) => direction === "for")}
        units={units}
      />
      <WhyList
        title="Speaks against it"
        items={why.filter(({ direction }) => direction === "against")}
        units={units}
      />
    </>
  );
}

const WHY_SHOWN = 4;

function WhyList({
  title,
  items,
  units,
}: {
  title: string;
  items: readonly WhyItem[];
  units: UnitPreferences;
}) {
  if (items.length === 0) return null;
  const rest = items.slice(WHY_SHOWN);
  return (
    <div>
      <h4>{title}</h4>
      <WhyItems items={items.slice(0, WHY_SHOWN)} units={units} />
      {rest.length > 0 && (
        <details className={styles.rest}>
          <summary>{rest.length} lighter ones</summary>
          <WhyItems items={rest} units={units} />
        </details>
      )}
    </div>
  );
}

function WhyItems({ items, units }: { items: readonly WhyItem[]; units: UnitPreferences }) {
  return (
    <ul className={styles.why}>
      {items.map((item) => (
        <li key={item.key}>
          {item.sentence}
          {item.amounts.length > 0 && (
            <span className={styles.amounts}>
              {" "}
              {item.amounts.map((amount) => amountText(amount, units)).join(", ")}
            </span>
          )}
          <span className={styles.source}> {whyBasis(item)}</span>
        </li>
      ))}
    </ul>
  );
}

/** What a weight rests on: the document, how many more, and how sure it is where that is not "read in it". */
function whyBasis({ source, sources }: WhyItem): string {
  const doubt = needsCheck(source) ? confidenceWords[source.confidence] : "";
  if (source.confidence === "own-estimate") return doubt;
  const more = sources.length > 1 ? ` and ${sources.length - 1} more` : "";
  return `${source.document}${more}${doubt && ` (${doubt})`}`;
}
