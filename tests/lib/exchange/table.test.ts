import fc from "fast-check";
import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import { csvHead, csvRows } from "@/lib/exchange";
import { tableToCsv, type Cell } from "@/lib/exchange/table";
import { arbHostile } from "./hostile-text";
import { readCsv } from "./read-back";

/** RFC 4180 read literally, by a machine of four states that shares nothing with the writer. */
function rfc4180(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let cell = "";
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const c = text[i] ?? "";
    if (quoted && c === '"' && text[i + 1] === '"') cell += text[++i];
    else if (c === '"') quoted = !quoted;
    else if (!quoted && c === ",") [row, cell] = [[...row, cell], ""];
    else if (!quoted && c === "\r" && text[i + 1] === "\n") {
      rows.push([...row, cell]);
      [row, cell] = [[], ""];
      i++;
    } else cell += c;
  }
  return rows;
}

const csvOf = (rows: readonly (readonly Cell[])[], columns: readonly string[]) =>
  tableToCsv({ columns, rows }, { bom: false });
const arbRows = (arb: fc.Arbitrary<string>) =>
  fc
    .integer({ min: 1, max: 4 })
    .chain((width) =>
      fc.array(fc.array(arb, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 4 }),
    );
const headings = (rows: readonly (readonly unknown[])[]) => (rows[0] ?? []).map((_, i) => `column ${i + 1}`);

describe("CSV", () => {
  it("read back gives the same text", () => {
    fc.assert(
      fc.property(arbRows(arbHostile), (rows) => {
        const columns = headings(rows);
        expect(readCsv(csvOf(rows, columns))).toEqual([columns, ...rows]);
        expect(readCsv(tableToCsv({ columns, rows }, { bom: true }))).toEqual([columns, ...rows]);
      }),
      { numRuns: 1000 },
    );
  });

  it("is RFC 4180: a literal reader finds the same cells", () => {
    fc.assert(
      fc.property(arbRows(arbHostile), (rows) => {
        const columns = headings(rows);
        const read = rfc4180(csvOf(rows, columns));
        const byPapa = Papa.parse<string[]>(csvOf(rows, columns).replace(/\r\n$/, ""), {
          newline: "\r\n",
          delimiter: ",",
        });
        expect(read).toEqual(byPapa.data);
        expect(read).toHaveLength(rows.length + 1);
      }),
      { numRuns: 1000 },
    );
  });

  it("has no cell that could be a formula, whichever separator a program splits at", () => {
    fc.assert(
      fc.property(arbRows(arbHostile), fc.constantFrom(",", ";", "\t"), (rows, delimiter) => {
        const csv = csvOf(rows, headings(rows));
        const cells = [...Papa.parse<string[]>(csv, { delimiter }).data.flat(), ...csv.split(delimiter)];
        for (const cell of cells) expect(cell).not.toMatch(/^["\t\r\n]*[=+\-@＝＋－＠]/);
      }),
      { numRuns: 2000 },
    );
  });

  it("leaves numbers numbers: a negative one is no formula, a text that looks like one is text", () => {
    expect(csvOf([[-1.5, "-1.5", 0.1, null, true, NaN]], ["a", "b", "c", "d", "e", "f"])).toBe(
      "a,b,c,d,e,f\r\n-1.5,'-1.5,0.1,,yes,\r\n",
    );
  });

  it("writes a byte order mark when asked, and quotes by doubling", () => {
    expect(tableToCsv({ columns: ['say "when"'], rows: [["a,b"], [""]] }, { bom: true })).toBe(
      '\uFEFF"say ""when"""\r\n"a,b"\r\n""\r\n',
    );
  });
});

it("in parts of any size a CSV is the same text", () => {
  fc.assert(
    fc.property(arbRows(arbHostile), fc.integer({ min: 1, max: 3 }), fc.boolean(), (rows, size, bom) => {
      const columns = headings(rows);
      const parts = [csvHead(columns, { bom })];
      for (let from = 0; from < rows.length; from += size)
        parts.push(csvRows({ columns, rows: rows.slice(from, from + size) }));
      expect(parts.join("")).toBe(tableToCsv({ columns, rows }, { bom }));
    }),
    { numRuns: 300, seed: 1 },
  );
});
