import { emptyPlanAsk, PlanAskSchema, type PlanAsk } from "./ask";

/** Whoever looks has their own dials, and a certificate is for machines. */
const notInAddress: readonly string[] = ["dials", "steel"];

/** The ask as the part of an address behind "?"; what is open is left out. SI units, names of the fields. */
export function planQuery(ask: PlanAsk): string {
  const params = new URLSearchParams();
  for (const [name, value] of Object.entries(ask)) {
    if (!notInAddress.includes(name) && value !== null) params.set(name, String(value));
  }
  return params.toString();
}

/** An ask out of an address. What cannot be read counts as open, each by itself: an address may be old. */
export function readPlanQuery(params: URLSearchParams): PlanAsk {
  const known = Object.keys(emptyPlanAsk).flatMap((name) => {
    const text = params.get(name);
    if (text === null || notInAddress.includes(name)) return [];
    const number = Number(text);
    const readings = [text, ...(text.trim() !== "" && Number.isFinite(number) ? [number] : [])];
    const read = readings.find((value) => PlanAskSchema.safeParse({ [name]: value }).success);
    return read === undefined ? [] : [[name, read] as const];
  });
  return PlanAskSchema.parse(Object.fromEntries(known));
}
