"use client";

import { useState } from "react";
import { logSubject } from "@/components/log";
import { Button, page } from "@/components/ui";

export interface ShownPlace {
  readonly subject: string;
  readonly title: string | null;
  readonly path: readonly string[];
  readonly frozen: boolean;
}

/** ["photos", "0", "drawing", "marks", "2", "note"] -> "marks, note" */
const fieldWords = (path: readonly string[]): string => {
  const words = path.filter((step) => !/^\d+$/.test(step) && !wrappers.has(step));
  return (words.length > 0 ? words : path).slice(-2).join(", ");
};
const wrappers = new Set(["content", "draft", "judgement", "photos", "drawing", "returned"]);

/** Looks for a person's name in free texts and lists where it stands, so that it can be edited before they go. */
export function NamePlaces({ look }: { readonly look: () => Promise<readonly ShownPlace[] | null> }) {
  const [places, setPlaces] = useState<readonly ShownPlace[] | "looking" | "failed" | null>(null);
  const ask = async (): Promise<void> => {
    setPlaces("looking");
    setPlaces((await look().catch(() => null)) ?? "failed");
  };
  return (
    <div aria-live="polite">
      <Button onClick={() => void ask()} disabled={places === "looking"}>
        {places === "looking" ? "Looking …" : "Look for the name in titles and notes"}
      </Button>
      {places === "failed" && <p className={page.note}>It could not be looked for. Try again.</p>}
      {Array.isArray(places) && places.length === 0 && (
        <p className={page.note}>The name stands in no other text.</p>
      )}
      {Array.isArray(places) && places.length > 0 && (
        <ul>
          {(places as readonly ShownPlace[]).map((place) => (
            <li key={`${place.subject} ${place.path.join()}`}>
              <Place {...place} />
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

function Place({ subject, title, path, frozen }: ShownPlace) {
  const { kind, href } = logSubject(subject);
  const words = `${kind}${title === null ? "" : ` ${title}`}`;
  return (
    <>
      {href ? <a href={href}>{words}</a> : words}: {fieldWords(path)}
      {frozen && " (frozen: it stays as it is)"}
    </>
  );
}
