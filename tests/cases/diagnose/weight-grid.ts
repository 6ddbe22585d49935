import { presentWeights, type Weights } from "@/lib/diagnose/tuning";

/** The weights in coarse steps about the present ones: 4 x 2 x 3 x 3 x 2 = 144. Own choice of steps. */

type Strength = Weights["linkStrength"];

/** Present; classes further apart; nearer together; all weaker. */
const strengths = (present: Strength): readonly Strength[] => [
  present,
  { strong: 0.7, middling: 0.25, weak: 0.06 },
  { strong: 0.5, middling: 0.35, weak: 0.2 },
  { strong: 0.4, middling: 0.2, weak: 0.07 },
];

/** On -log(1 - q) looks multiply, so half the force is its square root. */
const softer = ({ usual, clear }: Weights["lookForce"]): Weights["lookForce"] => ({
  usual: { favours: Math.sqrt(usual.favours), opposes: Math.sqrt(usual.opposes) },
  clear: { favours: Math.sqrt(clear.favours), opposes: Math.sqrt(clear.opposes) },
});

const scaled = (of: Weights["commonness"], by: number): Weights["commonness"] => ({
  everyday: of.everyday * by,
  often: of.often * by,
  sometimes: of.sometimes * by,
  seldom: of.seldom * by,
});

/** The first is the present table itself. */
export function weightGrid(present: Weights = presentWeights): readonly Weights[] {
  return strengths(present.linkStrength).flatMap((linkStrength) =>
    [present.judgedShare, 1].flatMap((judgedShare) =>
      [1, 0.5, 2].flatMap((leakiness) =>
        [1, 0.5, 2].flatMap((faults) =>
          [present.lookForce, softer(present.lookForce)].map((lookForce): Weights => ({
            linkStrength,
            judgedShare,
            leak: present.leak * leakiness,
            leakByNature: present.leakByNature * leakiness,
            commonness: scaled(present.commonness, faults),
            lookForce,
          })),
        ),
      ),
    ),
  );
}

export function weightsText({ linkStrength, judgedShare, leak, commonness, lookForce }: Weights): string {
  const { strong, middling, weak } = linkStrength;
  return [
    `links ${strong}/${middling}/${weak}`,
    `judged ${judgedShare}`,
    `leak ${leak}`,
    `everyday ${commonness.everyday}`,
    `clear look ${lookForce.clear.favours.toFixed(1)}`,
  ].join(", ");
}
