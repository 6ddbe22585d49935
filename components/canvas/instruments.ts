/** What readings are taken with at the bench, and its smallest division in mm (common practice). */
export const instruments: readonly { readonly name: string; readonly resolutionMm: number }[] = [
  { name: "pit gauge, dial", resolutionMm: 0.1 },
  { name: "vernier calliper", resolutionMm: 0.05 },
  { name: "fillet gauge, leaf", resolutionMm: 1 },
  { name: "throat and leg gauge, sliding", resolutionMm: 0.5 },
  { name: "high-low gauge", resolutionMm: 0.5 },
  { name: "feeler gauge", resolutionMm: 0.05 },
  { name: "steel rule", resolutionMm: 0.5 },
];
