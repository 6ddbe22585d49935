import type { Coat } from "./surface-point";

/** Coats of the shop floor. Reflectances are own estimates near published metal values (iron F0 about 0.56 0.54 0.51). */
export const coats = {
  millScale: { diffuse: [0.026, 0.028, 0.032], mirror: [0.1, 0.104, 0.112], rough: 0.43 },
  millScaleWorn: { diffuse: [0.055, 0.054, 0.054], mirror: [0.15, 0.15, 0.152], rough: 0.54 },
  steel: { diffuse: [0.045, 0.044, 0.043], mirror: [0.5, 0.485, 0.465], rough: 0.36 },
  stainless: { diffuse: [0.05, 0.049, 0.047], mirror: [0.58, 0.565, 0.535], rough: 0.34 },
  weldBright: { diffuse: [0.036, 0.034, 0.032], mirror: [0.46, 0.446, 0.424], rough: 0.27 },
  crest: { diffuse: [0.045, 0.044, 0.042], mirror: [0.66, 0.645, 0.62], rough: 0.2 },
  weldDull: { diffuse: [0.05, 0.046, 0.042], mirror: [0.26, 0.245, 0.23], rough: 0.42 },
  weldOxide: { diffuse: [0.028, 0.03, 0.038], mirror: [0.16, 0.165, 0.19], rough: 0.44 },
  heatGrey: { diffuse: [0.1, 0.098, 0.095], mirror: [0.1, 0.1, 0.1], rough: 0.62 },
  heatDark: { diffuse: [0.02, 0.018, 0.018], mirror: [0.06, 0.055, 0.055], rough: 0.5 },
  straw: { diffuse: [0.07, 0.052, 0.028], mirror: [0.4, 0.31, 0.18], rough: 0.38 },
  bronze: { diffuse: [0.05, 0.026, 0.016], mirror: [0.28, 0.15, 0.1], rough: 0.4 },
  blue: { diffuse: [0.022, 0.027, 0.046], mirror: [0.12, 0.145, 0.22], rough: 0.4 },
  soot: { diffuse: [0.009, 0.009, 0.009], mirror: [0.018, 0.018, 0.018], rough: 0.85 },
  fume: { diffuse: [0.24, 0.215, 0.18], mirror: [0.03, 0.03, 0.03], rough: 0.9 },
  rust: { diffuse: [0.17, 0.065, 0.022], mirror: [0.03, 0.028, 0.025], rough: 0.9 },
  slag: { diffuse: [0.034, 0.026, 0.02], mirror: [0.06, 0.058, 0.055], rough: 0.2 },
  slagMatt: { diffuse: [0.095, 0.072, 0.05], mirror: [0.04, 0.04, 0.04], rough: 0.5 },
  silicate: { diffuse: [0.075, 0.035, 0.014], mirror: [0.06, 0.055, 0.05], rough: 0.13 },
  spatterSkin: { diffuse: [0.04, 0.036, 0.033], mirror: [0.13, 0.12, 0.112], rough: 0.5 },
  spatter: { diffuse: [0.05, 0.048, 0.046], mirror: [0.34, 0.33, 0.315], rough: 0.42 },
  poreFloor: { diffuse: [0.012, 0.011, 0.01], mirror: [0.045, 0.042, 0.04], rough: 0.6 },
  crack: { diffuse: [0.006, 0.006, 0.006], mirror: [0.01, 0.01, 0.01], rough: 0.9 },
  // Copper's F0 is about 0.95 0.64 0.54, tungsten's about 0.50 0.50 0.49; both dulled by the arc.
  copper: { diffuse: [0.1, 0.034, 0.018], mirror: [0.6, 0.3, 0.21], rough: 0.33 },
  tungsten: { diffuse: [0.2, 0.2, 0.205], mirror: [0.72, 0.72, 0.73], rough: 0.42 },
  chalk: { diffuse: [0.62, 0.63, 0.61], mirror: [0.03, 0.03, 0.03], rough: 0.9 },
  cutEdge: { diffuse: [0.06, 0.058, 0.056], mirror: [0.3, 0.29, 0.28], rough: 0.5 },
  objectSide: { diffuse: [0.012, 0.012, 0.012], mirror: [0.02, 0.02, 0.02], rough: 0.7 },
} as const satisfies Record<string, Coat>;
