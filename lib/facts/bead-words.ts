import type { BeadContent } from "@/lib/assess";
import { setupFieldNames } from "@/lib/setup";
import { electrodeWords, imperfectionWords, spokenOf } from "./synonyms";

/**
 * Everything written about a bead that words can be looked for in, one thing a line, and beside it what the trade calls the
 * same. Numbers of beads are no words: "#12" is asked for by number.
 */
export function beadWords(content: BeadContent, welder: string | null): string {
  const { title, setup, judgement, photos } = content;
  const marks = photos.flatMap(({ drawing }) => drawing.marks);
  const written = [
    title,
    welder,
    content.welder,
    judgement.note,
    judgement.criteriaId,
    judgement.tried?.sentence,
    judgement.tried?.causeId,
    ...setupFieldNames.map((field) => setup[field]).filter((value) => typeof value === "string"),
    ...judgement.readings.map(({ instrument }) => instrument),
    ...marks.map(({ note }) => note),
  ].filter((text): text is string => Boolean(text));
  const kinds = new Set([...marks.map(({ imperfection }) => imperfection), ...written.flatMap(spokenOf)]);
  return [
    ...written,
    ...(setup.electrodeClass === null ? [] : electrodeWords(setup.electrodeClass)),
    ...[...kinds].flatMap(imperfectionWords),
  ]
    .join("\n")
    .normalize("NFKC");
}
