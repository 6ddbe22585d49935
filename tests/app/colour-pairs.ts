/**
 * What may stand on what. `text` is read (WCAG 2.2, 1.4.3: 4.5 to 1), `controls` are edges, focus rings and signs that must be
 * seen to be used (1.4.11: 3 to 1), `decor` says nothing that is not said otherwise.
 */
const washes = ["straw", "bronze", "purple", "blue", "ok", "danger"].map((name) => `${name}-wash`);
const surfaces = ["paper", "panel", ...washes];

export const text: Readonly<Record<string, readonly string[]>> = {
  ink: [...surfaces, "line", "track"],
  "ink-soft": [...surfaces, "line"],
  "on-ink": ["ink", "purple", "danger"],
  bronze: ["paper", "panel", "bronze-wash"],
  purple: ["paper", "panel", "purple-wash"],
  blue: surfaces,
  ok: ["paper", "panel", "ok-wash"],
  danger: ["paper", "panel", "straw-wash", "danger-wash"],
  straw: ["band"],
  "on-straw": ["straw", "straw-bright"],
  "on-band": ["band", "band-line"],
  "band-soft": ["band"],
  // The plate that says how sure an answer is: the band turned round.
  band: ["on-band"],
  "photo-light": ["bench"],
  "scan-dark": ["scan-light"],
};

export const controls: Readonly<Record<string, readonly string[]>> = {
  ink: surfaces,
  edge: surfaces,
  blue: surfaces,
  danger: surfaces,
  ok: surfaces,
  bronze: surfaces,
  purple: surfaces,
  straw: ["band", "bench"],
  "on-band": ["band"],
  "photo-dark": ["photo-light"],
};

export const decor = ["line", "track", "band-line", "straw", "band"];
