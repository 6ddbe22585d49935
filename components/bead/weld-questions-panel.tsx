"use client";

import { Chip, Panel } from "@/components/ui";
import { isFillet } from "@/lib/trade";
import type { WeldQuestions } from "@/lib/assess";
import type { RunSetup } from "@/lib/setup";
import styles from "./verdict-panel.module.css";

type YesNo = Exclude<keyof WeldQuestions, "closed">;

const questions: readonly {
  readonly key: YesNo;
  readonly text: string;
  readonly only: "fillet" | "butt" | "any";
}[] = [
  { key: "singleSided", text: "Welded from one side only?", only: "butt" },
  { key: "completePenetration", text: "Complete joint penetration asked for?", only: "butt" },
  { key: "transverseToTension", text: "Lies across the tensile stress?", only: "any" },
  { key: "stiffenerToWeb", text: "Joins a stiffener to a web?", only: "fillet" },
];

/** What a code asks about the weld itself. "Don't know" is an answer, and leaves the clause open. */
export function WeldQuestionsPanel({
  setup,
  weld,
  onChange,
}: {
  setup: RunSetup;
  weld: WeldQuestions;
  onChange: (weld: WeldQuestions) => void;
}) {
  const kind = setup.joint === null ? "any" : isFillet(setup.joint) ? "fillet" : "butt";
  const asked = questions.filter(({ only }) => only === "any" || kind === "any" || only === kind);
  return (
    <Panel title="About this weld" tone="straw">
      {asked.map(({ key, text }) => (
        <div key={key} role="group" aria-label={text}>
          <p>{text}</p>
          <div className={styles.chips}>
            {([true, false, null] as const).map((value) => (
              <Chip
                key={String(value)}
                on={weld[key] === value}
                onClick={() => onChange({ ...weld, [key]: value })}
              >
                {value === null ? "Don't know" : value ? "Yes" : "No"}
              </Chip>
            ))}
          </div>
        </div>
      ))}
    </Panel>
  );
}
