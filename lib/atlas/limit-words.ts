import { MM_PER_INCH } from "@/lib/base";
import {
  formulaText,
  type BeadFigure,
  type Condition,
  type Constant,
  type Formula,
  type LimitClause,
  type LimitsOfSet,
  type SymbolName,
  type Test,
} from "@/lib/accept";
import { seamWords } from "@/lib/report";

/** What the letters of the limits stand for, as ISO 5817 clause 4 uses them; r, m, h and A are ours. */
export const symbolWords: Readonly<Record<SymbolName, string>> = {
  t: "thickness of the plate or wall, of the thinner part",
  s: "thickness asked of a butt weld",
  a: "throat asked of a fillet",
  b: "width of the face",
  z: "leg asked of a fillet",
  L: "length of the weld",
  r: "width of the root",
  m: "the longer leg",
  h: "height of the face",
  A: "throat as measured",
};

const figureWords: Readonly<Record<BeadFigure, string>> = {
  "leg-shortfall": "leg short of what was asked for",
  "leg-least": "shorter leg",
  "leg-greatest": "longer leg",
  "leg-difference": "difference of the legs",
  "throat-shortfall": "throat short of what was asked for",
  "throat-excess": "throat beyond what was asked for",
  convexity: "height of the face over the toes",
  reinforcement: "height of the face over the plate",
  width: "width",
  "toe-angle": "angle at the toe",
  misalignment: "step between the plates",
  "root-gap": "gap at the root",
};

/** "1 mm", or "1 mm (1/32 in)" where a code states both and neither follows from the other. */
function constantWords(constant: Constant, unit: string): string {
  if (typeof constant === "number") return `${tidy(constant)}${unit}`;
  return `${tidy(constant.si)} mm (${inchWords(constant.us)} in)`;
}

const tidy = (value: number): string => String(Number(value.toFixed(3)));

/** In sixty-fourths where it is a fraction of them, else in thousandths: 0.79375 mm is 1/32 in. */
function inchWords(mm: number): string {
  const parts = Math.round((mm / MM_PER_INCH) * 64);
  if (parts === 0 || Math.abs(parts / 64 - mm / MM_PER_INCH) > 1e-6) return tidy(mm / MM_PER_INCH);
  const whole = Math.floor(parts / 64);
  let [over, under] = [parts % 64, 64];
  while (over > 0 && over % 2 === 0) [over, under] = [over / 2, under / 2];
  return [whole > 0 || over === 0 ? String(whole) : "", over > 0 ? `${over}/${under}` : ""]
    .filter(Boolean)
    .join(" ");
}

/** "0.05 t, but no more than 0.5 mm" */
export function formulaWords(formula: Formula, unit: string): string {
  if (typeof formula === "number" || "si" in formula) return constantWords(formula, unit);
  if ("times" in formula) return timesWords(formula.times, formula.of);
  const words = (parts: readonly Formula[]) => parts.map((part) => formulaWords(part, unit));
  if ("sum" in formula) return words(formula.sum).join(" + ");
  const [first, ...rest] = words("min" in formula ? formula.min : formula.max);
  return `${first}, but no ${"min" in formula ? "more" : "less"} than ${rest.join(" or ")}`;
}

/** "0.05 t"; a share that is no short decimal as a part: a sixth of the length is L / 6. */
function timesWords(factor: Constant, of: SymbolName): string {
  const si = typeof factor === "number" ? factor : factor.si;
  const part = Math.round(1 / si);
  const isPart =
    part > 1 && Math.abs(si - 1 / part) < 1e-6 && Math.abs(si * 1000 - Math.round(si * 1000)) > 1e-6;
  return isPart ? `${of} / ${part}` : formulaText({ times: factor, of }, "si");
}

const list = (words: readonly string[], last: string): string =>
  words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} ${last} ${words.at(-1)}`;

/** One test as a clause: "depth at most 0.05 t, but no more than 0.5 mm". */
export function testWords(test: Test): string {
  const beyond =
    "beyond" in test && test.beyond !== undefined ? "; beyond it a qualified person decides" : "";
  switch (test.test) {
    case "none-allowed":
      return "none allowed";
    case "allowed":
      return "allowed";
    case "person-decides":
      return "no number: a qualified person decides";
    case "each":
      return `${list(test.size, "or")} at most ${formulaWords(test.limit, " mm")}${beyond}`;
    case "stack":
      return test.limit === 0
        ? `no two in one cross section${beyond}`
        : `depths and heights in one cross section together at most ${formulaWords(test.limit, " mm")}${beyond}`;
    case "bead": {
      const unit = test.figure === "toe-angle" ? "°" : " mm";
      const bound = test.comparison === "<=" ? "at most" : "at least";
      return `${figureWords[test.figure]} ${bound} ${formulaWords(test.limit, unit)}${beyond}`;
    }
    case "figure-by-person":
      return `${figureWords[test.figure]}: no number, a qualified person decides`;
    case "total":
      return totalWords(test);
  }
}

function totalWords(test: Extract<Test, { test: "total" }>): string {
  const what = test.of === "count" ? "how many" : `${list(test.of, "and")} added up`;
  const where = test.window === null ? "on the whole weld" : `in any ${constantWords(test.window, " mm")}`;
  const only = test.only
    ? ` of those with a ${test.only.size} ${test.only.bound === "above" ? "over" : "of at least"} ${formulaWords(test.only.value, " mm")}`
    : "";
  return `${what}${only} ${where} at most ${formulaWords(test.limit, test.of === "count" ? "" : " mm")}`;
}

const flagWords: Readonly<Record<Extract<Condition, { flag: string }>["flag"], readonly [string, string]>> = {
  alongLapEdge: ["along the edge of a lapped plate", "not along the edge of a lapped plate"],
  singleSided: ["welded from one side", "welded from both sides"],
  transverseToTension: ["across the tensile stress", "not across the tensile stress"],
  stiffenerToWeb: ["stiffener to web", "not stiffener to web"],
  completePenetration: ["complete penetration asked for", "no complete penetration asked for"],
};

/** One condition: "t up to 3 mm", "butt weld". */
function conditionWords(condition: Condition, settings: LimitsOfSet["settings"]): string {
  if ("kind" in condition) return `${list(condition.kind, "or")} weld`;
  if ("flag" in condition) return flagWords[condition.flag][condition.is ? 0 : 1];
  if ("seam" in condition)
    return list(
      condition.seam.map((one) => seamWords[one].toLowerCase()),
      "or",
    );
  if ("setting" in condition) {
    const setting = settings.find(({ id }) => id === condition.setting);
    const choice = setting?.choices.find(({ value }) => value === condition.is);
    return `${setting?.title ?? condition.setting}: ${choice?.title ?? String(condition.is)}`;
  }
  const { symbol, above, atLeast, upTo, below } = condition;
  const from = above !== undefined ? ["over", above] : atLeast !== undefined ? ["from", atLeast] : null;
  const to = upTo !== undefined ? ["up to", upTo] : below !== undefined ? ["below", below] : null;
  const bounds = [from, to].flatMap((one) =>
    one ? [`${one[0] as string} ${constantWords(one[1] as Constant, " mm")}`] : [],
  );
  return `${symbol} ${bounds.join(" ")}`;
}

/** When a variant of a clause holds; empty: always, or where none above it did. */
export const whenWords = (when: readonly Condition[], settings: LimitsOfSet["settings"]): string =>
  when.map((condition) => conditionWords(condition, settings)).join(", ");

const placeWord: Readonly<Record<string, string>> = { root: "at the root", beside: "beside the weld" };

/** Where on the weld a clause looks, and when it is judged at all; empty for everywhere and always. */
export function reachWords({ places, onlyWhen }: Pick<LimitClause, "places" | "onlyWhen">): string {
  const at = (some: readonly string[]) =>
    list(
      some.map((one) => placeWord[one] ?? one.replaceAll("-", " ")),
      "or",
    );
  const where = places?.only ? `only ${at(places.only)}` : places?.not ? `not ${at(places.not)}` : "";
  const when =
    onlyWhen === null ? "" : onlyWhen === "seen" ? "judged where it is seen" : "judged where it was read";
  return [where, when].filter(Boolean).join("; ");
}
