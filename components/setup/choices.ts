import type { RunSetup } from "@/lib/setup";
import {
  directionWords,
  gasWords,
  inputWords,
  jointWords,
  metalWords,
  polarityWords,
  positionWords,
  processWords,
  progressionWords,
  surfaceWords,
  transferWords,
} from "./words";

export interface ChoiceSpec<V> {
  readonly label: string;
  readonly hint?: string;
  readonly options: readonly { readonly value: V; readonly label: string }[];
}

export type ChoiceName =
  | "process"
  | "transfer"
  | "polarity"
  | "gas"
  | "inputPower"
  | "travelDirection"
  | "joint"
  | "position"
  | "progression"
  | "baseMetal"
  | "surface"
  | "outdoors";
type ValueOf<N extends ChoiceName> = NonNullable<RunSetup[N]>;

const from = <V extends string>(words: Record<V, string>) =>
  (Object.entries(words) as [V, string][]).map(([value, label]) => ({ value, label }));

/** Every question with a closed list of answers. "Don't know" is not one of them: it is the absence of one. */
export const choices: { readonly [N in ChoiceName]: ChoiceSpec<ValueOf<N>> } = {
  process: { label: "Process", options: from(processWords) },
  transfer: { label: "Metal transfer", options: from(transferWords) },
  polarity: {
    label: "Polarity",
    hint: "Read it at the lugs, not off the panel.",
    options: from(polarityWords),
  },
  gas: { label: "Shielding gas", options: from(gasWords) },
  inputPower: { label: "Mains input", options: from(inputWords) },
  travelDirection: { label: "Travel direction", options: from(directionWords) },
  joint: { label: "Joint", options: from(jointWords) },
  position: { label: "Position", options: from(positionWords) },
  progression: { label: "Vertical, which way", options: from(progressionWords) },
  baseMetal: { label: "Base metal", options: from(metalWords) },
  surface: { label: "Surface before welding", options: from(surfaceWords) },
  outdoors: {
    label: "Where",
    options: [
      { value: false, label: "Indoors, no draft" },
      { value: true, label: "Outdoors or drafty" },
    ],
  },
};
