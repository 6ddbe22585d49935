export { betaQuantile } from "./beta-quantile";
export { clamp } from "./clamp";
export { erf } from "./erf";
export { binaryEntropyBits, entropyBits } from "./entropy";
export { interpolate, type Knot } from "./interpolate";
export { logOdds } from "./log-odds";
export { cohenKappa, fleissKappa, type Kappa } from "./kappa";
export { normalDensity, normalShare } from "./normal";
export { fShareAbove, studentQuantile } from "./student";
