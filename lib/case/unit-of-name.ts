import { beadQuantityRows, judgedQuantities } from "@/lib/measure";

/** Names whose unit their ending does not say. */
const byName: Readonly<Record<string, string>> = {
  volts: "volts",
  amps: "amperes",
  x: "photo pixels",
  y: "photo pixels",
  radius: "photo pixels",
  photoPxPerViewPx: "photo pixels per viewed pixel",
  pickSigmaPx: "viewed pixels",
  ...Object.fromEntries(
    judgedQuantities.map((quantity) => {
      const { name, unit } = beadQuantityRows[quantity];
      return [name, unit === "deg" ? "degrees" : unit];
    }),
  ),
};

/** Longest ending first. */
const byEnding: readonly (readonly [ending: RegExp, unit: string])[] = [
  [/MmPerMin$/, "mm/min"],
  [/MPerMin$/, "m/min"],
  [/LPerMin$/, "L/min"],
  [/Mm2$/, "mm2"],
  [/Mm$/, "mm"],
  [/Deg$/, "degrees"],
  [/MlPer100G$/, "ml in 100 g"],
  [/Percent$/, "percent"],
  [/Px$/, "photo pixels"],
  [/[a-z]S$/, "seconds"],
];

/** The unit that a number of this name is in; null for a bare number (a count, a ratio, a version). */
export function unitOfName(name: string): string | null {
  if (Object.hasOwn(byName, name)) return byName[name]!;
  return byEnding.find(([ending]) => ending.test(name))?.[1] ?? null;
}
