import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { cite, commonPractice, documents, standings } from "@/lib/trade";
import { type BibliographyEntry } from "@/lib/trade/tables/documents";
import { sealedTables } from "@/lib/assess";

const lib = fileURLToPath(new URL("../../../lib/", import.meta.url));
const files = readdirSync(lib, { recursive: true, encoding: "utf8" }).filter((file) => file.endsWith(".ts"));
const texts = new Map(files.map((file) => [file, readFileSync(lib + file, "utf8")]));
const rows = Object.entries<BibliographyEntry>(documents);

function* sourcesIn(value: unknown): Generator<{ document: string; confidence: string }> {
  if (value === null || typeof value !== "object") return;
  if ("document" in value && "confidence" in value) yield value as { document: string; confidence: string };
  for (const one of Object.values(value)) yield* sourcesIn(one);
}

/** Laws of our own over the bibliography; no published source. */
describe("the bibliography", () => {
  it("names each document once, under an id that speaks", () => {
    const plain = rows.map(([, { title }]) => title.toLowerCase().replace(/[^a-z0-9]/g, ""));
    expect(plain.filter((title, i) => plain.indexOf(title) !== i)).toEqual([]);
    expect(rows.filter(([id]) => !/^[a-z0-9]+(-[a-z0-9]+)+$/.test(id))).toEqual([]);
    expect(rows.filter(([, { standing, title }]) => !standings.includes(standing) || title === "")).toEqual(
      [],
    );
  });

  it("holds no document that nothing leans on", () => {
    const all = [...texts].filter(([file]) => !file.endsWith("tables/documents.ts")).map(([, text]) => text);
    const idle = rows.filter(
      ([id]) => !all.some((text) => text.includes(`"${id}"`) || text.includes(`"${id} first"`)),
    );
    expect(idle.map(([id]) => id)).toEqual([]);
  });

  it("is the only place where a document is written down: nobody makes a source by hand", () => {
    const byHand = [...texts].filter(
      ([file, text]) =>
        file !== "trade/tables/documents.ts" && /\bdocument: *["'`](?!\$\{titleOf)/.test(text),
    );
    expect(byHand.map(([file]) => file)).toEqual([]);
  });

  it("gives every source of the sealed tables its document, or says that there is none", () => {
    const titles = new Set(rows.map(([, { title }]) => title));
    const none = [
      "common practice, no source",
      "trade knowledge, no text read",
      "own estimate",
      "Toeline",
      "by definition: solid steel wire",
    ];
    const sources = [...sourcesIn(sealedTables)];
    expect(sources.length).toBeGreaterThan(700);
    // Several documents in one source are joined by a semicolon, which stands in no title but one's own.
    const stray = sources.filter(
      ({ document }) =>
        !titles.has(document) &&
        !none.includes(document) &&
        document.split("; ").some((one) => !titles.has(one)),
    );
    expect([...new Set(stray.map(({ document }) => document))]).toEqual([]);
  });
});

describe("cite", () => {
  it("takes edition and part from the bibliography unless the fact says them itself", () => {
    expect(cite("tungsten-arc-handbook", "seen")).toEqual({
      document: "Gas Tungsten Arc Welding Handbook",
      edition: "2021",
      clause: "pp. 137-149, 278",
      confidence: "seen",
    });
    expect(cite("aws-d1-1", "memory", { edition: "2020", clause: "7.23", note: "n" })).toEqual({
      document: "AWS D1.1/D1.1M",
      edition: "2020",
      clause: "7.23",
      confidence: "memory",
      note: "n",
    });
    expect(cite("aws-a3-0", "memory")).toEqual({ document: "AWS A3.0", confidence: "memory" });
  });

  it("knows what is no document", () => {
    expect(commonPractice).toEqual({ document: "common practice, no source", confidence: "common-practice" });
  });
});
