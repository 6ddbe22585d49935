import { describe, expect, it } from "vitest";
import { begun, closed, heard, isGoing, MOST_SHOWN, readLook, type Look } from "@/components/log/look";
import { inDepth } from "../../setup/in-depth";
import { outcomeOf, spokenOf } from "@/components/log/look-words";

const looking = (part: string, place: number, looked: number, of: number) => ({
  ...{ says: "looking", part, place, parts: 9, looked, of },
});
const counts = { entries: 12_000, subjects: 1, photos: 1, frozen: 0, signatures: 1, derived: 1 };
const sound = [
  { says: "waiting" },
  looking("log", 1, 2000, 12_000),
  looking("log", 1, 12_000, 12_000),
  looking("records", 2, 100, 2000),
  looking("records", 2, 1100, 2000),
  looking("lists and figures", 9, 1, 1),
  { says: "ended", looked: counts, head: "12000:abc", findings: 0 },
];
const changed = [
  ...sound.slice(0, 4),
  { says: "found", findings: ["One is changed.", "One is gone."], remarks: ["The clock ran back."] },
  looking("lists and figures", 9, 1, 1),
  { says: "ended", looked: counts, head: "12000:abc", findings: 2 },
];
const linesOf = (said: readonly object[]): string => said.map((one) => `${JSON.stringify(one)}\n`).join("");
const encoder = new TextEncoder();

/** An answer of these bytes, in pieces of one size; what comes after them: its end, a broken connection, or nothing yet. */
function answerOf(text: string, after: "end" | "break" | "hang" = "end", size = 7): Response {
  const bytes = encoder.encode(text);
  let at = 0;
  return new Response(
    new ReadableStream({
      pull(controller) {
        if (at < bytes.length) return controller.enqueue(bytes.slice(at, (at += size)));
        if (after === "end") controller.close();
        else if (after === "break") controller.error(new TypeError("network error"));
        else return new Promise(() => undefined);
      },
    }),
  );
}

async function read(answer: Response, signal = new AbortController().signal): Promise<readonly Look[]> {
  const shown: Look[] = [];
  await readLook(
    async () => answer,
    (look) => shown.push(look),
    signal,
  );
  return shown;
}
const last = async (answer: Response): Promise<Look> => (await read(answer)).at(-1)!;

describe("a look at the records", () => {
  it("fits where it came to its end and found nothing, and says what it looked at", async () => {
    const look = await last(answerOf(linesOf(sound)));
    expect(look).toMatchObject({ state: "fits", head: "12000:abc", found: 0 });
    expect(outcomeOf(look)).toBe(
      "Everything fits: 12000 log entries, 1 record, 1 photo, 0 frozen texts, 1 signature.",
    );
  });

  it("says what it found, and that worth a word apart from it", async () => {
    const look = await last(answerOf(linesOf(changed)));
    expect(look).toMatchObject({
      state: "does-not-fit",
      findings: ["One is changed.", "One is gone."],
      remarks: ["The clock ran back."],
    });
    expect(outcomeOf(look)).toMatch(/^2 findings among 12000 log entries, /);
  });

  it("cut off at any byte, by an end or by a break, never says that everything fits", async () => {
    for (const said of [sound, changed]) {
      const text = linesOf(said);
      for (const after of ["end", "break"] as const)
        // The last of them is the whole text but for the end of its last line.
        for (let at = (text.length - 1) % inDepth(3, 1); at < text.length; at += inDepth(3, 1)) {
          const look = await last(answerOf(text.slice(0, at), after, 64));
          expect(look.state, `${after} at ${at}`).toBe("broken");
          expect(outcomeOf(look)).not.toMatch(/fits:/);
          expect(outcomeOf(look)).toMatch(
            /broke off before everything was looked at.*whether the records fit/,
          );
        }
    }
  });

  it("stopped at any line says how far it came, that the rest was not looked at, and nothing of the whole", async () => {
    for (const said of [sound, changed])
      for (let at = 0; at < said.length; at += 1) {
        const stop = new AbortController();
        const shown: Look[] = [];
        const answer = answerOf(linesOf(said.slice(0, at)), "hang", 1024);
        const body = answer.body!;
        const reading = readLook(
          async () => new Response(abortable(body, stop.signal)),
          (look) => shown.push(look),
          stop.signal,
        );
        await new Promise((resolve) => setTimeout(resolve, 5));
        stop.abort();
        await reading;
        const look = shown.at(-1)!;
        expect(look.state).toBe("stopped");
        const words = outcomeOf(look);
        expect(words).toMatch(/^Stopped before everything was looked at\./);
        expect(words).not.toMatch(/[Ee]verything fits|among/);
        expect(words).toMatch(at <= 1 ? /Nothing was looked at yet/ : /the rest was not looked at/);
      }
  });

  it("says in words how far it came", () => {
    const look = closed(
      sound
        .slice(0, 5)
        .map((one) => JSON.stringify(one))
        .reduce(heard, begun),
      "stopped",
    );
    expect(outcomeOf(look)).toBe(
      "Stopped before everything was looked at. It had looked at log entries: 12\u00a0000 of 12\u00a0000; records against the log: 1100 of 2000. That is part 2 of 9; the rest was not looked at. It says nothing of whether the records fit.",
    );
  });

  it("takes no end for one that counts other findings than came, and none after it was stopped", () => {
    const lost = changed.filter(({ says }) => says !== "found").map((one) => JSON.stringify(one));
    expect(lost.reduce(heard, begun).state).toBe("broken");
    const stopped = closed(begun, "stopped");
    expect(heard(stopped, JSON.stringify(sound.at(-1)))).toBe(stopped);
    const fits = sound.map((one) => JSON.stringify(one)).reduce(heard, begun);
    expect(closed(fits, "broken")).toBe(fits);
    expect(isGoing(fits)).toBe(false);
  });

  it("is read out by parts and quarters, not at every number", async () => {
    const steps = Array.from({ length: 500 }, (_, i) => looking("records", 2, 40 * i, 20_000));
    const spoken = (await read(answerOf(linesOf(steps), "end", 4096))).filter(isGoing).map(spokenOf);
    expect(spoken.length).toBeGreaterThan(400);
    expect([...new Set(spoken)]).toEqual([
      "Looking at records against the log, part 2 of 9.",
      "Looking at records against the log, part 2 of 9, a quarter done.",
      "Looking at records against the log, part 2 of 9, half done.",
      "Looking at records against the log, part 2 of 9, three quarters done.",
    ]);
  });

  it("keeps no more sentences than a screen takes, and counts them all", () => {
    const many = Array.from({ length: 400 }, (_, i) => `Finding ${i}.`);
    const line = JSON.stringify({ says: "found", findings: many, remarks: [] });
    const look = [line, line, line].reduce(heard, begun);
    expect([look.findings.length, look.found]).toEqual([MOST_SHOWN, 1200]);
  });

  it("says why it was refused, and what broke it off, where that was said", async () => {
    const full = Response.json(
      { issues: [{ code: "x", message: "Wait for your other look." }] },
      { status: 429 },
    );
    expect(outcomeOf(await last(full))).toBe("Wait for your other look.");
    expect(outcomeOf(await last(new Response("", { status: 500 })))).toMatch(/could not be read just now/);
    const ended = await last(answerOf(linesOf([{ says: "broken", message: "It took too much memory." }])));
    expect(outcomeOf(ended)).toContain("It took too much memory.");
    const shown: Look[] = [];
    await readLook(
      () => Promise.reject(new TypeError("no network")),
      (look) => shown.push(look),
      new AbortController().signal,
    );
    expect(shown.at(-1)?.state).toBe("broken");
  });
});

/** As a browser ends the body of a fetch that is aborted. */
function abortable(body: ReadableStream<Uint8Array>, signal: AbortSignal): ReadableStream<Uint8Array> {
  const reader = body.getReader();
  const aborted = new Promise<never>((_, reject) =>
    signal.addEventListener("abort", () => reject(new DOMException("aborted", "AbortError"))),
  );
  return new ReadableStream({
    async pull(controller) {
      const { value, done } = await Promise.race([reader.read(), aborted]);
      if (done) controller.close();
      else controller.enqueue(value);
    },
  });
}
