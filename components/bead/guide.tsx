"use client";

import { Check, Circle } from "lucide-react";
import Link from "next/link";
import { useState } from "react";
import { Button, buttonClass } from "@/components/ui";
import type { BeadContent } from "@/lib/assess";
import { guideDone, guideStepIds, guideWords, nextStep } from "./guide-steps";
import styles from "./guide.module.css";

/**
 * Four lines over the workbench that say what comes next. It watches, and holds nothing up: all tools work as always, steps
 * may be done in any order, and it goes when somebody sends it away.
 */
export function Guide({ content, answerShown }: { content: BeadContent; answerShown: boolean }) {
  const [gone, setGone] = useState(false);
  const [read, setRead] = useState(false);
  const isMarked = guideDone(content, false).has("mark");
  // An answer is read where there is one: before a mark the causes say nothing.
  if (answerShown && isMarked && !read) setRead(true);
  if (gone) return null;
  const done = guideDone(content, read);
  const next = nextStep(done);
  return (
    <aside className={styles.guide} aria-label="Your first bead">
      <div role="status">
        {next === null ? (
          <p>
            <strong>That was a whole bead.</strong> Now one of your own: chip it, photograph it with the strip
            or a rule beside the weld.
          </p>
        ) : (
          <p>
            <strong>
              {guideStepIds.indexOf(next) + 1}. {guideWords[next].title}.
            </strong>{" "}
            {guideWords[next].how}
          </p>
        )}
      </div>
      <ol className={styles.steps}>
        {guideStepIds.map((id) => (
          <li key={id} data-next={id === next}>
            {done.has(id) ? <Check size={18} aria-label="done:" /> : <Circle size={18} aria-label="to do:" />}
            {guideWords[id].title}
          </li>
        ))}
      </ol>
      <div className={styles.ways}>
        {next === null && (
          <Link href="/beads/new" className={buttonClass("main")}>
            New bead
          </Link>
        )}
        <Button onClick={() => setGone(true)}>{next === null ? "Close" : "Leave the guide"}</Button>
      </div>
    </aside>
  );
}
