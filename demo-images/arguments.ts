import type { z } from "zod";
import { macroNames } from "./macro/macro-scenarios";
import { macroParamNames, MacroParamsSchema, type MacroParams } from "./macro/macro-params";
import { RenderParamsSchema, renderParamNames, type RenderParamsInput } from "./params";
import { scenarioNames } from "./scenarios";

export type ParsedArguments =
  | { readonly ok: true; readonly what: "list" }
  | { readonly ok: true; readonly what: "help" }
  | { readonly ok: true; readonly what: "render"; readonly params: RenderParamsInput; readonly out: string }
  | { readonly ok: true; readonly what: "section"; readonly params: MacroParams; readonly out: string }
  | { readonly ok: false; readonly sentence: string };

const refuse = (sentence: string): ParsedArguments => ({ ok: false, sentence });

/** --tilt-deg becomes tiltDeg. */
const toKey = (option: string): string =>
  option.replace(/^--/, "").replace(/-([a-z])/g, (_, letter: string) => letter.toUpperCase());
const toOption = (key: string): string =>
  `--${key.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;

const isSection = (scenario: string): boolean => (macroNames as readonly string[]).includes(scenario);
const keysOf = (names: readonly string[]): readonly string[] => names.filter((key) => key !== "scenario");
const optionKeys = keysOf(renderParamNames);
const sectionKeys = keysOf(macroParamNames);

export const usage = `Usage: render --list
       render SCENARIO --out F.jpg [options]
Options: ${optionKeys.map(toOption).join(" ")}
Of the sections (section-...): ${sectionKeys.map(toOption).join(" ")}
`;

function readValue(text: string): string | number {
  return text.trim() !== "" && Number.isFinite(Number(text)) ? Number(text) : text;
}

/** One sentence for the first thing wrong with the parameters. */
export function describeProblem(error: z.ZodError): string {
  const issue = error.issues[0]!;
  const key = issue.path[0];
  if (key === "scenario")
    return `There is no such scenario; --list names the ${scenarioNames.length + macroNames.length} there are.`;
  if (key === undefined) return issue.message;
  return `${toOption(String(key))} ${issue.message}.`;
}

/** Reads the command line; every refusal is one sentence. */
export function parseArguments(words: readonly string[]): ParsedArguments {
  if (words.length === 0 || words.includes("--help")) return { ok: true, what: "help" };
  if (words[0] === "--list")
    return words.length === 1
      ? { ok: true, what: "list" }
      : refuse("--list stands alone and takes nothing after it.");
  const [scenario, ...rest] = words;
  if (scenario!.startsWith("--")) return refuse("The scenario comes first, the options after it.");
  const keys = isSection(scenario!) ? sectionKeys : optionKeys;
  const given: Record<string, string | number> = {};
  let out: string | null = null;
  for (let i = 0; i < rest.length; i += 2) {
    const option = rest[i]!;
    const value = rest[i + 1];
    if (!option.startsWith("--"))
      return refuse(`"${option}" stands where an option is expected; options begin with --.`);
    if (option.includes("="))
      return refuse(`Write the value after a space: ${option.replace("=", " ").trim()}.`);
    if (option !== "--out" && !keys.includes(toKey(option)))
      return refuse(`There is no option ${option} here; --help names those there are.`);
    if (value === undefined || value.startsWith("--")) return refuse(`${option} needs a value after it.`);
    if (option === "--out") {
      if (out !== null) return refuse("--out is given twice.");
      out = value;
      continue;
    }
    const key = toKey(option);
    if (key in given) return refuse(`${option} is given twice.`);
    given[key] = readValue(value);
  }
  return isSection(scenario!) ? sectionOf({ ...given, scenario }, out) : beadOf({ ...given, scenario }, out);
}

const noFile = "--out must name a file that ends in .jpg.";
const isJpeg = (out: string | null): out is string => out !== null && /\.jpe?g$/i.test(out);

function beadOf(given: Record<string, unknown>, out: string | null): ParsedArguments {
  const parsed = RenderParamsSchema.safeParse(given);
  if (!parsed.success) return refuse(describeProblem(parsed.error));
  return isJpeg(out) ? { ok: true, what: "render", params: parsed.data, out } : refuse(noFile);
}

function sectionOf(given: Record<string, unknown>, out: string | null): ParsedArguments {
  const parsed = MacroParamsSchema.safeParse(given);
  if (!parsed.success) return refuse(describeProblem(parsed.error));
  return isJpeg(out) ? { ok: true, what: "section", params: parsed.data, out } : refuse(noFile);
}
