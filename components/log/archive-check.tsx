"use client";

import { FileCheck } from "lucide-react";
import { useState, useTransition } from "react";
import { Button, Field, form, Panel } from "@/components/ui";

interface Report {
  readonly state: "fits" | "does-not-fit" | "unreadable";
  readonly lines: readonly string[];
}

const titles = {
  fits: "Everything in it fits",
  "does-not-fit": "Not everything in it fits",
  unreadable: "This file could not be read as an archive",
} as const;

/** Sends an archive to be looked at, and shows what it holds. */
export function ArchiveCheck() {
  const [file, setFile] = useState<File | null>(null);
  const [report, setReport] = useState<Report | null>(null);
  const [said, setSaid] = useState<string | null>(null);
  const [pending, start] = useTransition();
  const send = () =>
    start(async () => {
      setSaid(null);
      setReport(null);
      const answer = await look(file);
      if (typeof answer === "string") setSaid(answer);
      else setReport(answer);
    });
  return (
    <>
      <Panel title="The archive" tone="blue">
        <Field label="Archive (.zip)">
          {(ids) => (
            <input
              {...ids}
              type="file"
              accept=".zip,application/zip"
              onChange={({ target }) => setFile(target.files?.[0] ?? null)}
            />
          )}
        </Field>
        <Button tone="main" onClick={send} disabled={pending || file === null}>
          <FileCheck aria-hidden="true" size={22} /> {pending ? "Looking …" : "Verify it"}
        </Button>
        <div aria-live="polite">{said && <p className={`${form.said} ${form.refused}`}>{said}</p>}</div>
      </Panel>
      {report && (
        <Panel title={titles[report.state]} tone={report.state === "fits" ? "ok" : "danger"}>
          {report.lines.map((line, i) => (
            <p key={i} style={{ overflowWrap: "anywhere" }}>
              {line}
            </p>
          ))}
        </Panel>
      )}
    </>
  );
}

/** What the archive holds, or one sentence why nobody looked. */
async function look(file: File | null): Promise<Report | string> {
  try {
    const answer = await fetch("/api/check", { method: "POST", body: file });
    if (answer.ok) return (await answer.json()) as Report;
    const { issues } = (await answer.json()) as { issues: readonly { message?: string }[] };
    return issues[0]?.message ?? "The archive could not be looked at.";
  } catch {
    return "The server did not answer. Try again, or verify it with the command.";
  }
}
