"use client";

import { ArrowUpRight, Hand, Lasso, Pencil, Redo2, Trash2, Type, Undo2 } from "lucide-react";
import dynamic from "next/dynamic";
import { useState } from "react";
import { EaselWaiting, newMarkId, type CanvasPhoto } from "@/components/canvas-kit";
import { Button, Field } from "@/components/ui";
import {
  itemName,
  MOST_WORDS,
  type LayerAction,
  type LayerHistory,
  type LayerItem,
  type LayerPoint,
} from "@/lib/course";
import type { Drawing } from "@/lib/marks";
import styles from "./layer-canvas.module.css";
import { textItem, type LayerTool } from "./layer-draft";

/** A canvas lives in the browser only; until it has arrived the place is kept free. */
const LayerCanvas = dynamic(() => import("./layer-canvas"), { ssr: false, loading: LayerWaiting });

function LayerWaiting() {
  return (
    <div className={styles.board}>
      <EaselWaiting />
    </div>
  );
}

const tools = [
  { tool: "move", name: "Move", Icon: Hand },
  { tool: "arrow", name: "Arrow", Icon: ArrowUpRight },
  { tool: "text", name: "Text", Icon: Type },
  { tool: "freehand", name: "Freehand", Icon: Pencil },
  { tool: "outline", name: "Outline", Icon: Lasso },
] as const satisfies readonly { tool: LayerTool; name: string; Icon: unknown }[];

export interface LayerBoardProps {
  readonly photo: CanvasPhoto;
  readonly drawing: Drawing;
  readonly history: LayerHistory;
  readonly onAction: (action: LayerAction) => void;
}

/** One photo with the tools to draw on it and a list of what was drawn. */
export function LayerBoard({ photo, drawing, history, onAction }: LayerBoardProps) {
  const [tool, setTool] = useState<LayerTool>("arrow");
  const [selectedId, setSelectedId] = useState<string | null>(null);
  const [textAt, setTextAt] = useState<LayerPoint | null>(null);
  const selected = history.present.find(({ id }) => id === selectedId) ?? null;
  const takeTool = (next: LayerTool) => {
    setTool(next);
    setTextAt(null);
  };
  const putText = (at: LayerPoint, words: string) => {
    const item = textItem(newMarkId(), at, words);
    if (item) onAction({ type: "add", item });
    setSelectedId(item?.id ?? null);
    setTextAt(null);
  };
  return (
    <div>
      <Tools {...{ tool, history, onAction, selectedId: selected?.id ?? null }} onTool={takeTool} />
      {textAt && (
        <WordsField
          label="Words on the photo"
          start=""
          onDone={(words) => putText(textAt, words)}
          onCancel={() => setTextAt(null)}
        />
      )}
      {selected && !textAt && (
        <ItsWords key={selected.id} item={selected} onAction={onAction} onDone={() => setSelectedId(null)} />
      )}
      <LayerCanvas
        key={photo.viewUrl}
        {...{ photo, drawing, history, onAction, tool, selectedId }}
        onToolChange={setTool}
        onSelect={setSelectedId}
        onTextAt={setTextAt}
      />
      <Drawn items={history.present} onSelect={setSelectedId} onAction={onAction} />
    </div>
  );
}

function Tools({
  tool,
  onTool,
  history,
  selectedId,
  onAction,
}: {
  tool: LayerTool;
  onTool: (tool: LayerTool) => void;
  history: LayerHistory;
  /** What Delete takes away; null while nothing is picked. */
  selectedId: string | null;
  onAction: (action: LayerAction) => void;
}) {
  const { past, future } = history;
  return (
    <div className={styles.tools} role="toolbar" aria-label="Drawing">
      {tools.map(({ tool: one, name, Icon }) => (
        <button key={one} type="button" aria-pressed={tool === one} onClick={() => onTool(one)}>
          <Icon size={20} aria-hidden="true" /> {name}
        </button>
      ))}
      <button
        type="button"
        aria-label="Undo"
        disabled={past.length === 0}
        onClick={() => onAction({ type: "undo" })}
      >
        <Undo2 size={20} aria-hidden="true" />
      </button>
      <button
        type="button"
        aria-label="Redo"
        disabled={future.length === 0}
        onClick={() => onAction({ type: "redo" })}
      >
        <Redo2 size={20} aria-hidden="true" />
      </button>
      <button
        type="button"
        disabled={selectedId === null}
        onClick={() => selectedId !== null && onAction({ type: "remove", id: selectedId })}
      >
        <Trash2 size={20} aria-hidden="true" /> Delete
      </button>
    </div>
  );
}

/** Asks anew for the words of what is picked, where it has any. */
function ItsWords({
  item,
  onAction,
  onDone,
}: {
  item: LayerItem;
  onAction: (action: LayerAction) => void;
  onDone: () => void;
}) {
  if (!("words" in item)) return null;
  return (
    <WordsField
      label={item.kind === "arrow" ? "Words at the arrow" : "Words on the photo"}
      start={item.words}
      onDone={(words) => {
        onAction({ type: "words", id: item.id, words });
        onDone();
      }}
      onCancel={onDone}
      waits
    />
  );
}

function WordsField({
  label,
  start,
  onDone,
  onCancel,
  waits = false,
}: {
  label: string;
  start: string;
  onDone: (words: string) => void;
  onCancel: () => void;
  /** Does not take the focus: drawing goes on unless somebody types. */
  waits?: boolean;
}) {
  const [words, setWords] = useState(start);
  return (
    <form
      className={styles.words}
      onSubmit={(event) => {
        event.preventDefault();
        onDone(words);
      }}
    >
      <Field label={label}>
        {(ids) => (
          <input
            {...ids}
            autoFocus={!waits}
            value={words}
            maxLength={MOST_WORDS}
            autoComplete="off"
            onChange={(event) => setWords(event.target.value)}
            onKeyDown={(event) => event.key === "Escape" && onCancel()}
          />
        )}
      </Field>
      <Button type="submit">Put there</Button>
    </form>
  );
}

/** Everything drawn, as a list: the way to it without aiming. */
function Drawn({
  items,
  onSelect,
  onAction,
}: {
  items: readonly LayerItem[];
  onSelect: (id: string) => void;
  onAction: (action: LayerAction) => void;
}) {
  if (items.length === 0) return <p>Nothing drawn yet. Drag over the photo to draw an arrow.</p>;
  return (
    <ul aria-label="What you drew">
      {items.map((item) => (
        <li key={item.id}>
          <div className={styles.itemRow}>
            <Button onClick={() => onSelect(item.id)}>{itemName(item)}</Button>
            <Button
              aria-label={`Delete ${itemName(item)}`}
              onClick={() => onAction({ type: "remove", id: item.id })}
            >
              <Trash2 size={20} aria-hidden="true" />
            </Button>
          </div>
        </li>
      ))}
    </ul>
  );
}
