import { renderScene, type RenderedScene } from "../render-scene";
import { closeUpScene, type CloseUp, type Severity } from "./close-up";

const SEED = 7;

/** What the generator is asked for. */
export const closeUpParams = ({ scenario }: CloseUp, megapixels: number) =>
  ({ scenario, seed: SEED, megapixels, distortion: 0, noise: 1, defocus: 0.15 }) as const;

/** The picture of an imperfection from near, and its truth. */
export const renderCloseUp = (closeUp: CloseUp, severity: Severity, megapixels: number): RenderedScene =>
  renderScene(closeUpParams(closeUp, megapixels), (spec) => closeUpScene(spec, closeUp, severity));
