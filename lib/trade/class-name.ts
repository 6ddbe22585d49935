/**
 * Reads an electrode classification as people write it and returns the table's id, or null.
 * Pure text work: whether the id is in the table is `electrodeClass`'s question.
 */
export function parseClassName(name: string): string | null {
  const text = name
    .toUpperCase()
    .replace(/[‐-―−]/g, "-") // typographic hyphens and minus signs
    .replace(/\bAWS\b|\bSFA\b/g, "")
    .replace(/\bA5\.\d+M?(\/A5\.\d+M?)?:?/g, "")
    .replace(/[\s_:]+/g, "");
  return carbonCored(text) ?? openCored(text) ?? stainlessCored(text) ?? solid(text) ?? covered(text);
}

/** A5.20: E71T-11, E71T-1C, E71T1MJH8, E491T-1C/M. */
function carbonCored(text: string): string | null {
  const m =
    /^E(?:7|49)([01X])T-?(GS|G|1[0-4]|[1-9])-?(C\/-?\d{0,2}M|M\/-?\d{0,2}C|CM|C|M)?-?[JDQ]{0,2}(?:-?H(?:4|8|16)R?)?$/.exec(
      text,
    );
  if (!m) return null;
  const gas = m[3] ?? "";
  return coredId(m[1] ?? "", m[2] ?? "", gas.length === 1 ? gas : "");
}

/** A5.36 open form: usability designator before the gas (C1 = CO2, M21 = 75-80 Ar), then condition, temperature. */
function openCored(text: string): string | null {
  const m = /^E(?:7|49)([01X])T-?(GS|G|1[0-4]|[1-9])-(C1|M21)?[AP][0-9Z]+-.+$/.exec(text);
  if (!m) return null;
  return coredId(m[1] ?? "", m[2] ?? "", m[3] === "C1" ? "C" : m[3] === "M21" ? "M" : "");
}

function coredId(position: string, usability: string, gas: string): string {
  // Only the classes that come in both gases carry C or M; a self-shielded wire with a stray suffix stays itself.
  const twoGas = ["1", "2", "5", "9", "12"].includes(usability);
  return `E7${position === "X" ? "1" : position}T-${usability}${twoGas ? gas : ""}`;
}

/** A5.22: E308LT0-3, E308LT1-1/-4, E308LT1. Without a gas digit (or with both) it is the two-gas wire. */
function stainlessCored(text: string): string | null {
  const m = /^E(308L|309L|310|316L)-?T-?([01])(?:-?([134])(?:\/-?([134]))?)?$/.exec(text);
  if (!m) return null;
  const [, grade = "", position = "", gas, other] = m;
  if (gas === undefined || (other !== undefined && other !== gas)) return `E${grade}T${position}-1/-4`;
  return `E${grade}T${position}-${gas}`;
}

/** A5.18 and A5.9: ER70S-6, ER48S-6, ER308L, ER308LSi. */
function solid(text: string): string | null {
  const carbon = /^ER(?:70|48)S-?([236])$/.exec(text);
  if (carbon) return `ER70S-${carbon[1]}`;
  const stainless = /^ER(308L|309L|316L)-?(?:SI)?$/.exec(text);
  return stainless ? `ER${stainless[1]}` : null;
}

/** A5.1 and A5.4: E7018-1H4R, E4918, E308L-16. */
function covered(text: string): string | null {
  const stainless = /^E(308L|309L|316L)-?(1[5-7])$/.exec(text);
  if (stainless) return `E${stainless[1]}-${stainless[2]}`;
  const carbon = /^E-?(?:(60|43)(10|11|13)|(70|49)(18|24|14|16|28))(?:-?[1M])?-?(?:H(?:4|8|16))?R?$/.exec(
    text,
  );
  if (!carbon) return null;
  return carbon[2] !== undefined ? `E60${carbon[2]}` : `E70${carbon[4]}`;
}
