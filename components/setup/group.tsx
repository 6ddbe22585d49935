"use client";

import type { ReactNode } from "react";
import { Panel, type PanelTone } from "@/components/ui";
import { partFields, setupParts, type SetupPart } from "@/lib/setup";
import { isAsked } from "./asked";
import styles from "./fields.module.css";
import { useForm } from "./form-context";

interface GroupSpec {
  readonly title: string;
  readonly short: string;
  readonly tone: PanelTone;
}

/** How each part of the form is headed; its fields stand in `setupFields`. */
const groups: Readonly<Record<SetupPart, GroupSpec>> = {
  electrode: { title: "Electrode and gas", short: "Electrode", tone: "straw" },
  machine: { title: "Machine", short: "Machine", tone: "bronze" },
  travel: { title: "Gun and travel", short: "Travel", tone: "purple" },
  joint: { title: "Joint and plate", short: "Joint", tone: "blue" },
};

function useKnown(name: SetupPart): { known: number; asked: number } {
  const { setup } = useForm();
  const asked = partFields(name).filter((field) => isAsked(field, setup));
  return { known: asked.filter((field) => setup[field] !== null).length, asked: asked.length };
}

/** Apart from the fields' own ids: the part "joint" also holds a field "joint". */
const partId = (prefix: string, name: SetupPart) => `${prefix}-part-${name}`;

export function Group({ name, children }: { name: SetupPart; children: ReactNode }) {
  const { prefix } = useForm();
  const { known, asked } = useKnown(name);
  const { title, tone } = groups[name];
  return (
    <div id={partId(prefix, name)} tabIndex={-1} className={styles.anchor}>
      <Panel
        title={title}
        tone={tone}
        aside={<span className={styles.hint}>{`${known} of ${asked} known`}</span>}
      >
        <div className={styles.group}>{children}</div>
      </Panel>
    </div>
  );
}

/** Four large keys to the parts of a long form, each with how much of it is known. */
export function GroupNav() {
  return (
    <nav className={styles.groupNav} aria-label="Parts of the set-up">
      {setupParts.map((name) => (
        <GroupKey key={name} name={name} />
      ))}
    </nav>
  );
}

function GroupKey({ name }: { name: SetupPart }) {
  const { prefix } = useForm();
  const { known, asked } = useKnown(name);
  const go = () => {
    const part = document.getElementById(partId(prefix, name));
    part?.scrollIntoView({ block: "start" });
    part?.focus({ preventScroll: true });
  };
  return (
    <button type="button" onClick={go} data-part={name}>
      <strong>{groups[name].short}</strong>
      <span>
        {known}/{asked}
        <span className="visually-hidden"> known</span>
      </span>
    </button>
  );
}
