"use client";

import { useState, useTransition } from "react";
import { Button, Field, form, Panel, SaidLine, type Said } from "@/components/ui";
import { ok, type Answer } from "@/lib/base";

export interface FoundBead {
  readonly id: string;
  readonly number: number;
  readonly title: string;
}

interface AttachProps {
  readonly welds: readonly { readonly id: string; readonly number: string }[];
  readonly find: (words: string) => Promise<Answer<readonly FoundBead[]>>;
  readonly attach: (beadId: string, weldId: string) => Promise<Answer<Said>>;
}

function useAttaching({ welds, find, attach }: AttachProps) {
  const [words, setWords] = useState("");
  const [weldId, setWeldId] = useState(welds[0]?.id ?? "");
  const [found, setFound] = useState<readonly FoundBead[] | null>(null);
  const [said, setSaid] = useState<Answer<Said> | null>(null);
  const [isWorking, start] = useTransition();
  const look = () =>
    start(async () => {
      const answer = await find(words);
      setFound(answer.ok ? answer.value : []);
      setSaid(answer.ok ? null : answer);
    });
  const put = (bead: FoundBead) =>
    start(async () => {
      const answer = await attach(bead.id, weldId);
      setSaid(answer.ok ? ok({ text: `Bead ${bead.number} is on the weld.` }) : answer);
      if (answer.ok) setFound((all) => all?.filter(({ id }) => id !== bead.id) ?? null);
    });
  return { words, setWords, weldId, setWeldId, found, said, isWorking, look, put };
}

/** Looks for a bead that is on no job yet, by number or words, and puts it on a weld. */
export function AttachBead(props: AttachProps) {
  const { words, setWords, weldId, setWeldId, found, said, isWorking, look, put } = useAttaching(props);
  const { welds } = props;
  return (
    <Panel title="Attach a bead that is there already">
      <form
        className={form.row}
        aria-label="Attach a bead"
        onSubmit={(event) => {
          event.preventDefault();
          look();
        }}
      >
        <Field label="Bead" hint="its number (#12) or words of it; empty: the newest">
          {(ids) => (
            <input
              {...ids}
              type="search"
              maxLength={80}
              autoComplete="off"
              value={words}
              onChange={({ target }) => setWords(target.value)}
            />
          )}
        </Field>
        {welds.length > 1 && (
          <Field label="to weld">
            {(ids) => (
              <select {...ids} value={weldId} onChange={({ target }) => setWeldId(target.value)}>
                {welds.map(({ id, number }) => (
                  <option key={id} value={id}>
                    {number}
                  </option>
                ))}
              </select>
            )}
          </Field>
        )}
        <Button type="submit" disabled={isWorking}>
          {isWorking ? "Working …" : "Find"}
        </Button>
      </form>
      {found?.length === 0 && <p>No bead without a job fits.</p>}
      <div className={form.row}>
        {found?.map((bead) => (
          <Button key={bead.id} disabled={isWorking} onClick={() => put(bead)}>
            Attach {bead.number}: {bead.title}
          </Button>
        ))}
      </div>
      <SaidLine answer={said} />
    </Panel>
  );
}
