"use client";
import {
  CircleDot,
  Droplet,
  Hand,
  Locate,
  Pentagon,
  Redo2,
  Route,
  Ruler,
  Slash,
  Spline,
  Undo2,
  type LucideIcon,
} from "lucide-react";
import { ToggleGroup } from "radix-ui";
import { useId } from "react";
import styles from "./tool-bar.module.css";
import type { Tool, ToolBarProps } from "./types";
import { toolWords } from "./words";

const icons: Readonly<Record<Tool, LucideIcon>> = {
  move: Hand,
  point: CircleDot,
  line: Spline,
  outline: Pentagon,
  metal: Droplet,
  edge: Slash,
  root: Locate,
  scale: Ruler,
  "weld-line": Route,
};

function ToolButton({ tool, missing }: { tool: Tool; missing: boolean }) {
  const Icon = icons[tool];
  const { name, key, does } = toolWords[tool];
  const tip = useId();
  return (
    <span className={styles.slot}>
      <ToggleGroup.Item
        value={tool}
        className={styles.tool}
        aria-label={name}
        aria-keyshortcuts={key}
        aria-describedby={tip}
      >
        <Icon aria-hidden="true" className={styles.icon} />
        <span>{name}</span>
        {missing && <span className={styles.missing} title="Not set yet" />}
      </ToggleGroup.Item>
      <span id={tip} role="tooltip" className={styles.tip}>
        {does} <kbd>{key}</kbd>
      </span>
    </span>
  );
}

/** Along the left edge on a desk, along the bottom under a thumb. */
export function ToolBar(props: ToolBarProps) {
  return (
    <div className={styles.bar}>
      <ToggleGroup.Root
        type="single"
        className={styles.tools}
        aria-label="Marking tools"
        value={props.tool}
        onValueChange={(value) => {
          const tool = props.offered.find((t) => t === value); // empty when the tool in hand is tapped again
          if (tool) props.onToolChange(tool);
        }}
      >
        {props.offered.map((tool) => (
          <ToolButton key={tool} tool={tool} missing={props.missing.has(tool)} />
        ))}
      </ToggleGroup.Root>
      <div className={styles.steps} role="group" aria-label="Undo and redo">
        <button type="button" className={styles.tool} disabled={!props.canUndo} onClick={props.onUndo}>
          <Undo2 aria-hidden="true" className={styles.icon} />
          <span>Undo</span>
        </button>
        <button type="button" className={styles.tool} disabled={!props.canRedo} onClick={props.onRedo}>
          <Redo2 aria-hidden="true" className={styles.icon} />
          <span>Redo</span>
        </button>
      </div>
    </div>
  );
}
