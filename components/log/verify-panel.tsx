"use client";

import { ShieldCheck, Square } from "lucide-react";
import { useEffect, useRef, useState } from "react";
import { Button, buttonClass, Field, form, page, Panel } from "@/components/ui";
import { brokenLook, noteLook } from "./kept-look";
import { begun, isGoing, readLook, type Look } from "./look";
import { howFar, outcomeOf, spokenOf } from "./look-words";

/** One look at a time, which ends when it is stopped and when the page is left. */
function useLook() {
  const [look, setLook] = useState<Look | null>(null);
  const going = useRef<AbortController | null>(null);
  useEffect(() => {
    setLook(brokenLook());
    // What ends because the page is left keeps its note, and the next page says so.
    const leave = (): void => {
      const was = going.current;
      going.current = null;
      was?.abort();
    };
    addEventListener("pagehide", leave);
    return () => {
      removeEventListener("pagehide", leave);
      leave();
    };
  }, []);
  const begin = (noted: string): void => {
    const stop = new AbortController();
    going.current = stop;
    const show = (next: Look): void => {
      if (going.current !== stop) return;
      setLook(next);
      noteLook(next);
    };
    show(begun);
    const { signal } = stop;
    const ask = () => fetch("/api/log/verify", { method: "POST", body: noted, signal });
    void readLook(ask, show, signal);
  };
  return { look, begin, stop: () => going.current?.abort() };
}

/** Looks at all records: how far it is, a way to stop, and what it found; where it found nothing, what it looked at. */
export function VerifyPanel() {
  const [noted, setNoted] = useState("");
  const { look, begin, stop } = useLook();
  const going = look !== null && isGoing(look);
  return (
    <Panel title="Do the records still fit?" tone="blue">
      <Field
        label="A head of the log kept elsewhere, if you have one"
        hint="The text of its file, or number:hash as printed. Where it stands, nothing before it was changed."
      >
        {(ids) => (
          <input
            {...ids}
            value={noted}
            onChange={({ target }) => setNoted(target.value)}
            autoComplete="off"
            maxLength={4000}
          />
        )}
      </Field>
      <Button tone="main" onClick={() => begin(noted)} disabled={going}>
        <ShieldCheck aria-hidden="true" size={22} /> {going ? "Looking …" : "Verify everything"}
      </Button>
      {going && (
        <Button onClick={stop}>
          <Square aria-hidden="true" size={22} /> Stop looking
        </Button>
      )}
      <a className={buttonClass("plain")} href="/api/log/head">
        Head of the log, to keep elsewhere
      </a>
      {look && going && <HowFar look={look} />}
      <div aria-live="polite">{look && <Said look={look} />}</div>
      {look && <Found look={look} />}
    </Panel>
  );
}

/** Numbers move several times a second, so they stand outside of what is read out. */
function HowFar({ look }: { look: Look }) {
  const now = look.parts.at(-1);
  if (!now) return null;
  return (
    <p>
      <progress aria-label="How far this part is" max={Math.max(1, now.of)} value={now.looked} />{" "}
      {howFar(now)}
      {look.found > 0 && `. Found so far: ${look.found}`}
    </p>
  );
}

function Said({ look }: { look: Look }) {
  if (isGoing(look)) return <p className={page.note}>{spokenOf(look)}</p>;
  return <p className={`${form.said} ${look.state === "fits" ? "" : form.refused}`}>{outcomeOf(look)}</p>;
}

function Found({ look: { findings, found, remarks, head } }: { look: Look }) {
  return (
    <>
      {findings.length > 0 && (
        <ul>
          {findings.map((line, i) => (
            <li key={i}>{line}</li>
          ))}
        </ul>
      )}
      {found > findings.length && (
        <p className={page.note}>
          {found - findings.length} more are not shown here; “npm run -s verify” prints all.
        </p>
      )}
      {remarks.map((line, i) => (
        <p key={i} className={page.note}>
          {line}
        </p>
      ))}
      {head && (
        <p className={page.note}>
          Newest entry: <span className={page.mono}>{head}</span>. Kept outside this machine and given back
          above, it shows later whether anything before it was changed or cut off.
        </p>
      )}
    </>
  );
}
