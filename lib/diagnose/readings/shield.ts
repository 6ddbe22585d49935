import { ownEstimate } from "@/lib/trade";
import type { Reader } from "../reading";
import { fact } from "./fact";

export const outdoorsReading: Reader = ({ setup }) =>
  setup.outdoors === null
    ? []
    : [
        fact({
          key: "outdoors",
          odds: {
            draft: setup.outdoors ? 8 : 0.5,
            "damp-consumable": setup.outdoors ? 2 : 1,
            "moisture-plate": setup.outdoors ? 2 : 1,
          },
          source: ownEstimate,
          forText: "Outdoors there is wind and damp.",
          againstText: "It was welded indoors.",
        }),
      ];
