"use client";

import { useState } from "react";
import { Button } from "@/components/ui";
import type { Check, Diagnosis } from "@/lib/diagnose";
import { gainWords, processWords } from "@/lib/report";
import type { RunSetup } from "@/lib/setup";
import styles from "./causes-panel.module.css";
import { CheckQuestion } from "./check-question";
import { useInIdle } from "./use-in-idle";

type Process = NonNullable<RunSetup["process"]>;

/** What is missing for a better answer, one thing at a time, with what it would bring. */
export function OneMoreThing({
  diagnosis,
  process,
  onProcess,
  onAnswer,
}: {
  diagnosis: Diagnosis;
  process: RunSetup["process"];
  onProcess: (process: Process) => void;
  onAnswer: (check: Check, answerId: string) => void;
}) {
  const [passed, setPassed] = useState<readonly string[]>([]);
  const checks = useInIdle(diagnosis, true, () => diagnosis.checks, true);
  const pass = (id: string) => setPassed((before) => [...before, id]);
  const asksProcess = process === null && !passed.includes("process");
  const left = (checks ?? []).filter(({ id }) => !passed.includes(id));
  const [check] = left;
  if (!asksProcess && check === undefined) return null;
  return (
    <section className={styles.more} aria-busy={checks === null} data-testid="one-more-thing">
      <h3>For a better answer</h3>
      {asksProcess ? (
        <ProcessQuestion onProcess={onProcess} />
      ) : (
        check && (
          <CheckQuestion
            check={check}
            gain={gainWords(check.informationBits, mostBits(left) === check.informationBits)}
            onAnswer={(answerId) => onAnswer(check, answerId)}
          />
        )
      )}
      <Button onClick={() => pass(asksProcess ? "process" : check!.id)}>Ask me something else</Button>
    </section>
  );
}

const mostBits = (checks: readonly Check[]): number =>
  Math.max(...checks.map(({ informationBits }) => informationBits));

/** Everything else hangs on it, and no question of the diagnosis asks for it. */
function ProcessQuestion({ onProcess }: { onProcess: (process: Process) => void }) {
  const answers = (Object.keys(processWords) as Process[]).map((id) => ({
    id,
    text: processWords[id],
    probability: 0,
  }));
  return (
    <CheckQuestion
      check={{ id: "process", question: "Which process?", how: "Each has causes of its own.", answers }}
      gain={gainWords(0, true)}
      onAnswer={(id) => onProcess(id as Process)}
    />
  );
}
