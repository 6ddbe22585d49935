"use client";

import { useState, useTransition, type KeyboardEvent, type MouseEvent } from "react";
import { LengthField } from "@/components/setup";
import { Button, Chip, Choice, Field, page } from "@/components/ui";
import { inWords, type Answer } from "@/lib/base";
import type { EyeMark } from "@/lib/eye";
import { imperfectionIds, imperfections, type ImperfectionId } from "@/lib/trade";
import type { UnitPreferences } from "@/lib/units";
import styles from "./eye.module.css";

const byName = imperfectionIds.toSorted((a, b) => imperfections[a].name.localeCompare(imperfections[b].name));
const first: ImperfectionId = "undercut";

export interface EyeLookingProps {
  readonly bead: { readonly id: string; readonly widthPx: number; readonly heightPx: number };
  readonly levelName: string;
  readonly units: UnitPreferences;
  readonly answer: (input: unknown) => Promise<Answer<unknown>>;
}

/** One drawn bead: point at what is there, name it, say how large, and whether it fails the level. */
export function EyeLooking({ bead, levelName, units, answer }: EyeLookingProps) {
  const [marks, setMarks] = useState<readonly EyeMark[]>([]);
  const [fails, setFails] = useState<boolean | null>(null);
  const [message, setMessage] = useState<string | null>(null);
  const [pending, start] = useTransition();
  const change = (at: number, part: Partial<EyeMark>) =>
    setMarks(marks.map((mark, i) => (i === at ? { ...mark, ...part } : mark)));
  const send = () =>
    start(async () => {
      const said = await answer({ beadId: bead.id, marks, fails });
      setMessage(said.ok ? null : inWords(said));
    });
  return (
    <div className={styles.looking}>
      <EyePicture
        bead={bead}
        marks={marks}
        onMark={(at) => setMarks([...marks, { at, kind: marks.at(-1)?.kind ?? first, sizeMm: null }])}
      />
      <div className={page.stack}>
        <p>{marks.length === 0 ? "Point at what you see. Nothing there? Then mark nothing." : ""}</p>
        <ol className={styles.marks} aria-label="Your marks">
          {marks.map((mark, i) => (
            <li key={`${mark.at.x} ${mark.at.y} ${i}`}>
              <MarkFields
                mark={mark}
                number={i + 1}
                units={units}
                onChange={(part) => change(i, part)}
                onRemove={() => setMarks(marks.filter((_, j) => j !== i))}
              />
            </li>
          ))}
        </ol>
        <fieldset className={styles.question}>
          <legend>Does anything on it fail {levelName}?</legend>
          <div className={page.buttons}>
            <Chip on={fails === true} onClick={() => setFails(fails === true ? null : true)}>
              It fails
            </Chip>
            <Chip on={fails === false} onClick={() => setFails(fails === false ? null : false)}>
              Nothing fails
            </Chip>
          </div>
        </fieldset>
        {message && (
          <p className={page.alert} role="alert">
            {message}
          </p>
        )}
        <Button tone="main" size="large" disabled={pending || fails === null} onClick={send}>
          Done with this bead
        </Button>
      </div>
    </div>
  );
}

function MarkFields({
  mark,
  number,
  units,
  onChange,
  onRemove,
}: {
  mark: EyeMark;
  number: number;
  units: UnitPreferences;
  onChange: (part: Partial<EyeMark>) => void;
  onRemove: () => void;
}) {
  return (
    <div className={styles.mark}>
      <Field label={`Mark ${number}`}>
        {(ids) => (
          <Choice
            {...ids}
            value={mark.kind}
            options={byName}
            nameOf={(kind) => imperfections[kind].name}
            onChoose={(kind) => onChange({ kind })}
          />
        )}
      </Field>
      <LengthField
        label="Size"
        value={mark.sizeMm}
        units={units}
        placeholder="not said"
        onChange={(sizeMm) => onChange({ sizeMm })}
      />
      <Button onClick={onRemove}>Take off</Button>
    </div>
  );
}

/** Picture pixels of one step of the cross. */
const STEP = 12;

const moves: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-STEP, 0],
  ArrowRight: [STEP, 0],
  ArrowUp: [0, -STEP],
  ArrowDown: [0, STEP],
};

type Spotted = { x: number; y: number };

/** Where finger or cross points, in picture pixels. */
function usePointing(
  { widthPx, heightPx }: { widthPx: number; heightPx: number },
  onMark: (at: Spotted) => void,
) {
  const [cross, setCross] = useState<Spotted | null>(null);
  const point = ({ currentTarget, clientX, clientY }: MouseEvent) => {
    const box = currentTarget.getBoundingClientRect();
    onMark({
      x: Math.round(((clientX - box.left) / box.width) * widthPx),
      y: Math.round(((clientY - box.top) / box.height) * heightPx),
    });
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const at = cross ?? { x: widthPx / 2, y: heightPx / 2 };
    const move = moves[event.key];
    if (event.key !== "Enter" && !move) return;
    event.preventDefault();
    if (move) setCross({ x: at.x + move[0], y: at.y + move[1] });
    else onMark(at);
  };
  return { cross, point, onKeyDown };
}

/** The picture under the finger; by keyboard arrows move a cross and Enter points. */
function EyePicture({
  bead: { id, widthPx, heightPx },
  marks,
  onMark,
}: {
  bead: EyeLookingProps["bead"];
  marks: readonly EyeMark[];
  onMark: (at: Spotted) => void;
}) {
  const [large, setLarge] = useState(false);
  const { cross, point, onKeyDown } = usePointing({ widthPx, heightPx }, onMark);
  return (
    <div>
      <div className={styles.window}>
        <div
          className={styles.picture}
          style={{ width: large ? "250%" : "100%", aspectRatio: `${widthPx} / ${heightPx}` }}
          role="application"
          tabIndex={0}
          aria-label="The bead. Arrow keys move a cross, Enter marks."
          data-testid="eye-picture"
          onClick={point}
          onKeyDown={onKeyDown}
        >
          <img src={`/eye/picture/${id}`} alt="A drawn bead" draggable={false} />
          <svg viewBox={`0 0 ${widthPx} ${heightPx}`} aria-hidden="true">
            {marks.map(({ at }, i) => (
              <Spot
                key={`${at.x} ${at.y} ${i}`}
                at={at}
                number={i + 1}
                unit={widthPx / (large ? 900 : 400)}
              />
            ))}
            {cross && (
              <path
                className={styles.cross}
                d={`M${cross.x - 20} ${cross.y}h40M${cross.x} ${cross.y - 20}v40`}
              />
            )}
          </svg>
        </div>
      </div>
      <Chip on={large} onClick={() => setLarge(!large)}>
        Larger
      </Chip>
    </div>
  );
}

/** A mark with its number. */
export function Spot({
  at,
  number,
  unit,
}: {
  at: { readonly x: number; readonly y: number };
  number: number;
  /** Picture pixels of a screen unit. */
  unit: number;
}) {
  return (
    <g className={styles.spot} strokeWidth={2 * unit}>
      <circle cx={at.x} cy={at.y} r={9 * unit} />
      <text x={at.x} y={at.y + 4.5 * unit} fontSize={13 * unit} textAnchor="middle">
        {number}
      </text>
    </g>
  );
}
