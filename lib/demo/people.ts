/** The students of the invented shop: first names only, and nobody's. */
export const demoGroup = "Evening bench, autumn";

export const demoPeople = [
  { name: "Maren", mark: "W-03" },
  { name: "Idris", mark: "W-05" },
  { name: "Sunniva", mark: "W-07" },
  { name: "Tobin", mark: "W-11" },
] as const;
export type DemoPerson = (typeof demoPeople)[number]["name"];
