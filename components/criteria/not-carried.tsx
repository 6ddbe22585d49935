import { Button, Panel } from "@/components/ui";
import type { NotCarried } from "@/lib/accept";
import styles from "./criteria.module.css";

/** Clauses that these limits did not carry over. One that a limit here says after all is taken off by hand. */
export function NotCarriedPanel({
  notCarried,
  onChange,
}: {
  readonly notCarried: NotCarried;
  readonly onChange: (next: NotCarried) => void;
}) {
  return (
    <Panel title={`Not carried over from ${notCarried.from}`} tone="bronze">
      <p>
        These limits do not look at them, and every verdict by these limits says so. Where the code governs
        they hold all the same.
      </p>
      <ul className={styles.limits}>
        {notCarried.clauses.map((one) => (
          <li key={`${one.clause} ${one.title}`}>
            <span>
              {one.clause} {one.title}: {one.why}
            </span>{" "}
            <Button
              aria-label={`A limit of ours says it: ${one.clause} ${one.title}`}
              onClick={() =>
                onChange({ ...notCarried, clauses: notCarried.clauses.filter((other) => other !== one) })
              }
            >
              A limit of ours says it
            </Button>
          </li>
        ))}
      </ul>
    </Panel>
  );
}
