"use client";

import { useState, useTransition } from "react";
import { inWords, type Answer } from "@/lib/base";
import { Button } from "./button";
import form from "./form.module.css";

/** The foot of a form that makes something: its button, and under it the sentence where nothing was made. */
export function MakeFoot({
  label,
  ready,
  onMake,
}: {
  label: string;
  ready: boolean;
  onMake: () => Promise<Answer<null>>;
}) {
  const [answer, setAnswer] = useState<Answer<null> | null>(null);
  const [pending, start] = useTransition();
  return (
    <>
      <div className={form.row}>
        <Button
          tone="main"
          size="large"
          disabled={!ready || pending}
          onClick={() => start(async () => setAnswer(await onMake()))}
        >
          {pending ? "Working …" : label}
        </Button>
      </div>
      {answer && !answer.ok && (
        <p role="alert" className={`${form.said} ${form.refused}`}>
          {inWords(answer)}
        </p>
      )}
    </>
  );
}
