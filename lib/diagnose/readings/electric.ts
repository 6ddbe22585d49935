import { ownEstimate } from "@/lib/trade";
import type { Reader } from "../reading";
import { fact } from "./fact";

/** Small mains input leaves little in reserve, a large one much; what a small one cannot do at all is a judged fact. */
export const inputReading: Reader = ({ setup }) => {
  if (setup.inputPower === null) return [];
  const small = setup.inputPower === "120V";
  return [
    fact({
      key: "inputPower",
      odds: { "input-power": small ? 4 : 0.3 },
      source: ownEstimate,
      forText: "A small mains input leaves little in reserve.",
      againstText: "This mains input is strong enough.",
    }),
  ];
};
