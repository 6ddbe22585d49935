import { readdirSync, readFileSync } from "node:fs";
import { type Door } from "@/lib/case";
import { doorNames } from "@/lib/case/doors";

const folder = new URL("../../cases/doors/", import.meta.url);

/** A case for one door or, where it is the text itself that is wrong, for each. Invented. */
interface Written {
  readonly name: string;
  readonly door: Door | "each";
  readonly case?: object;
  readonly text?: string;
  /** How often the text stands in a row. */
  readonly times?: number;
  readonly saved?: keyof typeof encodings;
  readonly status: 200 | 400 | 422;
  readonly lines?: readonly string[];
  /** For the one line of a JSON parser, whose words are the engine's. */
  readonly pattern?: string;
}

export interface DoorCase extends Omit<Written, "door"> {
  readonly door: Door;
  readonly bytes: Buffer<ArrayBuffer>;
}

const encodings = {
  "utf-8": (text: string) => Buffer.from(text),
  "utf-8-mark": (text: string) => Buffer.from(`\uFEFF${text}`),
  "utf-16le": (text: string) => Buffer.from(text, "utf16le"),
  "utf-16le-mark": (text: string) => Buffer.from(`\uFEFF${text}`, "utf16le"),
  "utf-16be-mark": (text: string) => Buffer.from(`\uFEFF${text}`, "utf16le").swap16(),
};

function bytesOf({ text, times = 1, saved = "utf-8", ...written }: Written): Buffer<ArrayBuffer> {
  return encodings[saved]((text ?? JSON.stringify(written.case)).repeat(times));
}

/** Every case of tests/cases/doors, with what it is at each door it is for. */
export const doorCases: readonly DoorCase[] = readdirSync(folder)
  .filter((name) => name.endsWith(".json"))
  .flatMap((name) => JSON.parse(readFileSync(new URL(name, folder), "utf8")) as Written[])
  .flatMap((one) =>
    (one.door === "each" ? doorNames : [one.door]).map((door) => ({ ...one, door, bytes: bytesOf(one) })),
  );
