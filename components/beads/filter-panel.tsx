import { SlidersHorizontal, X } from "lucide-react";
import Link from "next/link";
import { Field, buttonClass } from "@/components/ui";
import styles from "./filter-panel.module.css";

/** One question of the filter. */
export interface FilterQuestion {
  readonly name: string;
  readonly label: string;
  readonly kind: "choice" | "date" | "number" | "text";
  readonly value: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  /** What an unanswered choice is called; null: it always has an answer. */
  readonly blank?: string | null;
}

/** Something that is asked for now, and the address without it. */
export interface AskedFor {
  readonly label: string;
  readonly without: string;
}

/**
 * Words and filters of a list as an ordinary form: it works without JavaScript, and what was asked stands in the
 * address. On a phone the questions stay folded away until somebody wants them.
 */
export function FilterPanel({
  action,
  words,
  questions,
  asked,
  hidden = [],
  open = false,
}: {
  action: string;
  /** What was searched for; null where the page has no search. */
  words: string | null;
  questions: readonly FilterQuestion[];
  asked: readonly AskedFor[];
  /** Parts of the address this form does not ask about and must not lose. */
  hidden?: readonly (readonly [name: string, value: string])[];
  open?: boolean;
}) {
  return (
    <form action={action} method="get" className={styles.form} role="search" aria-label="Find beads">
      {hidden.map(([name, value]) => (
        <input key={`${name} ${value}`} type="hidden" name={name} value={value} />
      ))}
      {words !== null && (
        <div className={styles.search}>
          <label className="visually-hidden" htmlFor="bead-words">
            Words to look for
          </label>
          <input
            id="bead-words"
            name="q"
            type="search"
            defaultValue={words}
            placeholder="Words, or #number"
          />
          <button type="submit" className={buttonClass()}>
            Find
          </button>
        </div>
      )}
      <details className={styles.details} open={open}>
        <summary className={styles.summary}>
          <SlidersHorizontal size={20} aria-hidden="true" /> Filter and sort
        </summary>
        <div className={styles.grid}>
          {questions.map((question) => (
            <Question key={question.name} question={question} />
          ))}
        </div>
        <button type="submit" className={buttonClass("main")}>
          Show these
        </button>
      </details>
      {asked.length > 0 && (
        <ul className={styles.asked} aria-label="Asked for now">
          {asked.map(({ label, without }) => (
            <li key={label}>
              <Link href={without} className={styles.tag}>
                {label} <X size={18} aria-hidden="true" />
                <span className="visually-hidden">: take this filter off</span>
              </Link>
            </li>
          ))}
        </ul>
      )}
    </form>
  );
}

function Question({
  question: { name, label, kind, value, options, blank = "Any" },
}: {
  question: FilterQuestion;
}) {
  return (
    <Field label={label}>
      {({ "aria-invalid": _never, ...ids }) =>
        kind === "choice" ? (
          <select {...ids} name={name} defaultValue={value}>
            {blank !== null && <option value="">{blank}</option>}
            {options.map((option) => (
              <option key={option.value} value={option.value}>
                {option.label}
              </option>
            ))}
          </select>
        ) : (
          <input
            {...ids}
            name={name}
            defaultValue={value}
            type={kind}
            {...(kind === "number" ? { step: "any", min: 0, inputMode: "decimal" as const } : {})}
          />
        )
      }
    </Field>
  );
}
