"use client";

import { Camera, ImageUp } from "lucide-react";
import { useRouter } from "next/navigation";
import { useEffect, useId, useState, type ReactNode } from "react";
import { Button, buttonClass, Chip, Field, page } from "@/components/ui";
import { inWords } from "@/lib/base";
import type { RunChoices } from "@/lib/course";
import { fieldLabel, parseReading, quantityOf, type RunSetup } from "@/lib/setup";
import { polarities } from "@/lib/trade";
import { inputText, parseOrUnknown, unitsSentence, type UnitPreferences } from "@/lib/units";
import styles from "./hand-in-form.module.css";
import { sendHandIn } from "./send-hand-in";

const asked = ["wireFeedMPerMin", "volts", "ctwdMm"] as const;
type Asked = (typeof asked)[number];

export interface HandInFormProps {
  readonly code: string;
  readonly students: readonly { readonly id: string; readonly name: string }[];
  /** Name of the signed-in student; null: whoever hands in says who they are. */
  readonly signedInAs: string | null;
  readonly setup: RunSetup;
  readonly facts: readonly { readonly label: string; readonly value: string }[];
  readonly units: UnitPreferences;
}

const TYPED = "typed";

/** Who, a photo, four numbers and a word: handed in with one press. */
export function HandInForm({ code, students, signedInAs, setup, facts, units }: HandInFormProps) {
  const router = useRouter();
  const [who, setWho] = useState(students.length === 0 ? TYPED : "");
  const [typedName, setTypedName] = useState("");
  const [photo, setPhoto] = useState<File | null>(null);
  const [texts, setTexts] = useState(() => startTexts(setup, units));
  const [polarity, setPolarity] = useState(setup.polarity);
  const [note, setNote] = useState("");
  const [sent, setSent] = useState<number | null>(null);
  const [message, setMessage] = useState<string | null>(null);
  const read = Object.fromEntries(
    asked.map((name) => [name, parseOrUnknown(texts[name], (text) => parseReading(name, text, units))]),
  ) as Record<Asked, ReturnType<typeof parseOrUnknown>>;

  const send = async () => {
    const wrong =
      missing({ signedInAs, who, typedName, photo }) ??
      asked.map((name) => errorOf(read[name])).find(Boolean);
    if (wrong || !photo) return setMessage(wrong ?? null);
    const value = (name: Asked) => (read[name].ok ? read[name].value : null);
    const run: RunChoices = {
      wireFeedMPerMin: value("wireFeedMPerMin"),
      volts: value("volts"),
      ctwdMm: value("ctwdMm"),
      polarity,
    };
    setMessage(null);
    setSent(0);
    const answer = await sendHandIn(
      code,
      photo,
      {
        personId: signedInAs === null && who !== TYPED ? who : null,
        givenName: signedInAs === null && who === TYPED ? typedName : null,
        note,
        run,
      },
      setSent,
    );
    if (answer.ok) return router.push(answer.value.address);
    setSent(null);
    setMessage(inWords(answer));
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
      {signedInAs !== null ? (
        <p>Handing in as {signedInAs}.</p>
      ) : (
        <>
          {students.length > 0 && (
            <Field label="Who are you?">
              {(ids) => (
                <select {...ids} value={who} onChange={(event) => setWho(event.target.value)}>
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
          {who === TYPED && (
            <Field label="Your name">
              {(ids) => (
                <input
                  {...ids}
                  value={typedName}
                  maxLength={80}
                  autoComplete="name"
                  onChange={(event) => setTypedName(event.target.value)}
                />
              )}
            </Field>
          )}
        </>
      )}
      <PhotoPick photo={photo} onPick={setPhoto} />
      <details className={page.details} open>
        <summary>How you ran it</summary>
        <p className={page.note}>The set-up of the exercise is filled in. Change what was different.</p>
        <div className={page.fields}>
          {asked.map((name) => (
            <Field
              key={name}
              label={`${fieldLabel(name)} (${quantityOf(name).unit(units)})`}
              error={errorOf(read[name])}
            >
              {(ids) => (
                <input
                  {...ids}
                  inputMode="decimal"
                  autoComplete="off"
                  placeholder="not known"
                  value={texts[name]}
                  onChange={({ target }) => setTexts((old) => ({ ...old, [name]: target.value }))}
                />
              )}
            </Field>
          ))}
        </div>
        <Labelled label={fieldLabel("polarity")}>
          {polarities.map((one) => (
            <Chip key={one} on={polarity === one} onClick={() => setPolarity(polarity === one ? null : one)}>
              {one}
            </Chip>
          ))}
        </Labelled>
        {facts.length > 0 && (
          <p className={page.note}>{facts.map(({ label, value }) => `${label}: ${value}`).join(" · ")}</p>
        )}
      </details>
      <Field label="Note for your instructor, if any">
        {(ids) => (
          <textarea
            {...ids}
            rows={3}
            maxLength={600}
            value={note}
            onChange={(event) => setNote(event.target.value)}
          />
        )}
      </Field>
      {message && (
        <p className={page.alert} role="alert">
          {message}
        </p>
      )}
      <Button type="submit" tone="main" size="large" disabled={sent !== null}>
        {sent === null ? "Hand in" : `Sending, ${Math.round(sent * 100)} %`}
      </Button>
    </form>
  );
}

function startTexts(setup: RunSetup, units: UnitPreferences): Record<Asked, string> {
  const text = (name: Asked) => inputText(quantityOf(name).input, setup[name], units);
  return { wireFeedMPerMin: text("wireFeedMPerMin"), volts: text("volts"), ctwdMm: text("ctwdMm") };
}

function errorOf(read: ReturnType<typeof parseOrUnknown>): string | null {
  return read.ok ? null : read.issues.map(unitsSentence).join(" ");
}

function missing(form: {
  signedInAs: string | null;
  who: string;
  typedName: string;
  photo: File | null;
}): string | null {
  if (form.signedInAs === null && form.who === "") return "Choose your name from the list first.";
  if (form.signedInAs === null && form.who === TYPED && form.typedName.trim() === "")
    return "Type your name first.";
  return form.photo ? null : "Take or choose a photo of the bead first.";
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

function PhotoPick({ photo, onPick }: { photo: File | null; onPick: (photo: File) => void }) {
  const [shown, setShown] = useState<string | null>(null);
  useEffect(() => {
    if (!photo) return;
    const url = URL.createObjectURL(photo);
    setShown(url);
    return () => URL.revokeObjectURL(url);
  }, [photo]);
  const input = (label: string, capture: boolean, icon: ReactNode) => (
    <label className={`${buttonClass("plain", "large")} ${styles.pick}`}>
      {icon} {label}
      <input
        type="file"
        className="visually-hidden"
        accept="image/*,.heic,.heif"
        {...(capture ? { capture: "environment" as const } : {})}
        onChange={({ target }) => {
          const [file] = target.files ?? [];
          if (file) onPick(file);
        }}
      />
    </label>
  );
  return (
    <div className={styles.group}>
      <div className={page.buttons}>
        {input("Take a photo", true, <Camera aria-hidden="true" />)}
        {input("Choose a photo", false, <ImageUp aria-hidden="true" />)}
      </div>
      {photo && (
        <p role="status">
          {photo.name}, {(photo.size / 2 ** 20).toFixed(1)} MB
        </p>
      )}
      {/* A browser that cannot show the format (HEIC) shows nothing here; the photo is sent all the same. */}
      {shown && <img className={styles.preview} src={shown} alt="" onError={() => setShown(null)} />}
    </div>
  );
}
