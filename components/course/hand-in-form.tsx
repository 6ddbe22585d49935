"use client";

import { useRouter } from "next/navigation";
import { useId, useState, type ReactNode } from "react";
import { Button, Chip, Field, page } from "@/components/ui";
import { inWords } from "@/lib/base";
import type { RunChoices } from "@/lib/course";
import { fieldLabel, quantityOf, type RunSetup } from "@/lib/setup";
import { polarities } from "@/lib/trade";
import type { UnitPreferences } from "@/lib/units";
import styles from "./hand-in-form.module.css";
import {
  asked,
  errorOf,
  firstError,
  noTexts,
  readTexts,
  runOf,
  startTexts,
  type Asked,
  type ReadRun,
  type RunTexts,
} from "./hand-in-run";
import { PhotoPick } from "./photo-pick";
import { sendHandIn, type SentForm } from "./send-hand-in";

export interface HandInFormProps {
  readonly code: string;
  readonly students: readonly { readonly id: string; readonly name: string }[];
  /** Name of the signed-in student; null: whoever hands in says who they are. */
  readonly signedInAs: string | null;
  /** What the exercise asks to be run with. */
  readonly asked: RunSetup;
  readonly facts: readonly { readonly label: string; readonly value: string }[];
  readonly units: UnitPreferences;
}

const TYPED = "typed";

/** Who hands in: chosen from the list, or a name typed in. */
interface Student {
  readonly who: string;
  readonly typedName: string;
}

/** Who, a photo, four numbers and a word: handed in with one press. */
export function HandInForm({ code, students, signedInAs, asked: wanted, facts, units }: HandInFormProps) {
  const who = students.length === 0 ? TYPED : "";
  const [student, setStudent] = useState<Student>({ who, typedName: "" });
  const [photo, setPhoto] = useState<File | null>(null);
  const run = useTypedRun(wanted, units);
  const [note, setNote] = useState("");
  const sending = useHandingIn(code);
  const send = () => {
    const wrong = missing(student, signedInAs, photo) ?? firstError(run.read);
    if (wrong || !photo) return sending.say(wrong ?? null);
    const said = { run: runOf(run.read, run.polarity), asAsked: run.asAsked };
    return sending.send(photo, { ...saidBy(student, signedInAs), note, ...said });
  };
  return (
    <form
      className={page.stack}
      aria-label="Hand in"
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <Who {...{ students, signedInAs, student }} onChange={setStudent} />
      <PhotoPick photo={photo} onPick={setPhoto} />
      <HowRun {...run} {...{ units, facts }} wanted={startTexts(wanted, units)} />
      <Note note={note} onChange={setNote} />
      {sending.message && (
        <p className={page.alert} role="alert">
          {sending.message}
        </p>
      )}
      <Button type="submit" tone="main" size="large" disabled={sending.sent !== null}>
        {sending.sent === null ? "Hand in" : `Sending, ${Math.round(sending.sent * 100)} %`}
      </Button>
    </form>
  );
}

function Note({ note, onChange }: { note: string; onChange: (note: string) => void }) {
  return (
    <Field label="Note for your instructor, if any">
      {(ids) => (
        <textarea
          {...ids}
          rows={3}
          maxLength={600}
          value={note}
          onChange={(event) => onChange(event.target.value)}
        />
      )}
    </Field>
  );
}

/**
 * How it was run, as it is being typed. Nothing of the exercise is taken for granted: only "as asked" fills it in, and from
 * then on what is changed is what was different.
 */
function useTypedRun(wanted: RunSetup, units: UnitPreferences) {
  const [texts, onTexts] = useState<RunTexts>(noTexts);
  const [polarity, onPolarity] = useState<RunChoices["polarity"]>(null);
  const [asAsked, setAsAsked] = useState(false);
  const onAsAsked = () => {
    setAsAsked(!asAsked);
    onTexts(asAsked ? noTexts : startTexts(wanted, units));
    onPolarity(asAsked ? null : wanted.polarity);
  };
  return { texts, onTexts, polarity, onPolarity, asAsked, onAsAsked, read: readTexts(texts, units) };
}

/** One hand-in on its way: how much of it has gone, and why it was refused. */
function useHandingIn(code: string) {
  const router = useRouter();
  const [sent, setSent] = useState<number | null>(null);
  const [message, setMessage] = useState<string | null>(null);
  const send = async (photo: File, form: SentForm) => {
    setMessage(null);
    setSent(0);
    const answer = await sendHandIn(code, photo, form, setSent);
    if (answer.ok) return router.push(answer.value.address);
    setSent(null);
    setMessage(inWords(answer));
  };
  return { sent, message, say: setMessage, send };
}

const saidBy = ({ who, typedName }: Student, signedInAs: string | null) => ({
  personId: signedInAs === null && who !== TYPED ? who : null,
  givenName: signedInAs === null && who === TYPED ? typedName : null,
});

function missing({ who, typedName }: Student, signedInAs: string | null, photo: File | null): string | null {
  if (signedInAs === null && who === "") return "Choose your name from the list first.";
  if (signedInAs === null && who === TYPED && typedName.trim() === "") return "Type your name first.";
  return photo ? null : "Take or choose a photo of the bead first.";
}

function Who({
  students,
  signedInAs,
  student,
  onChange,
}: Pick<HandInFormProps, "students" | "signedInAs"> & {
  student: Student;
  onChange: (student: Student) => void;
}) {
  if (signedInAs !== null) return <p>Handing in as {signedInAs}.</p>;
  return (
    <>
      {students.length > 0 && (
        <Field label="Who are you?">
          {(ids) => (
            <select
              {...ids}
              value={student.who}
              onChange={({ target }) => onChange({ ...student, who: target.value })}
            >
              <option value="">Choose your name …</option>
              {students.map(({ id, name }) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
              <option value={TYPED}>I am not in this list</option>
            </select>
          )}
        </Field>
      )}
      {student.who === TYPED && (
        <Field
          label="Your name"
          hint="Or your identification, as it stands in your instructor’s list, so that it finds you."
        >
          {(ids) => (
            <input
              {...ids}
              value={student.typedName}
              maxLength={80}
              autoComplete="name"
              onChange={({ target }) => onChange({ ...student, typedName: target.value })}
            />
          )}
        </Field>
      )}
    </>
  );
}

/** How it was run; empty until the student says something. */
function HowRun({
  texts,
  read,
  polarity,
  units,
  facts,
  wanted,
  asAsked,
  onTexts,
  onPolarity,
  onAsAsked,
}: Pick<HandInFormProps, "units" | "facts"> & {
  texts: RunTexts;
  read: ReadRun;
  polarity: RunChoices["polarity"];
  wanted: RunTexts;
  asAsked: boolean;
  onTexts: (texts: RunTexts) => void;
  onPolarity: (polarity: RunChoices["polarity"]) => void;
  onAsAsked: () => void;
}) {
  const label = (name: Asked) => `${fieldLabel(name)} (${quantityOf(name).unit(units)})`;
  return (
    <details className={page.details} open>
      <summary>How you ran it</summary>
      <div className={page.buttons}>
        <Chip on={asAsked} onClick={onAsAsked}>
          I ran it as asked
        </Chip>
      </div>
      <p className={page.note}>
        {asAsked
          ? "Filled in as the exercise asks. Change what was different."
          : "Say what you know. What stays empty is not known."}
      </p>
      <div className={page.fields}>
        {asked.map((name) => (
          <Field key={name} label={label(name)} error={errorOf(read[name])}>
            {(ids) => (
              <input
                {...ids}
                inputMode="decimal"
                autoComplete="off"
                placeholder={wanted[name] === "" ? "not known" : `asked: ${wanted[name]}`}
                value={texts[name]}
                onChange={({ target }) => onTexts({ ...texts, [name]: target.value })}
              />
            )}
          </Field>
        ))}
      </div>
      <Labelled label={fieldLabel("polarity")}>
        {polarities.map((one) => (
          <Chip key={one} on={polarity === one} onClick={() => onPolarity(polarity === one ? null : one)}>
            {one}
          </Chip>
        ))}
      </Labelled>
      {facts.length > 0 && (
        <p className={page.note}>
          {asAsked ? "" : "Asked: "}
          {facts.map(({ label, value }) => `${label}: ${value}`).join(" · ")}
        </p>
      )}
    </details>
  );
}

function Labelled({ label, children }: { label: string; children: ReactNode }) {
  const id = useId();
  return (
    <div role="group" aria-labelledby={id} className={styles.group}>
      <span id={id} className={styles.label}>
        {label}
      </span>
      <div className={page.buttons}>{children}</div>
    </div>
  );
}
