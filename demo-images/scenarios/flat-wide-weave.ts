import { flatProfile } from "../geometry/profile";
import { mixSeed } from "../noise/random";
import { beadOf, gasShielded, poseOf, ripplesOf, sceneOf, setupOf, type Scenario } from "./parts";

/** A weave run hot and slow: spread thin and wide, brown silicate left in its hollows. */
export const flatWideWeave: Scenario = (seed) =>
  sceneOf(seed, {
    title: "Wide, flat weave with silicate islands and slag that would not chip",
    setup: setupOf({
      ...gasShielded,
      joint: "bead-on-plate",
      thicknessMm: 10,
      volts: 31,
      travelSpeedMmPerMin: 190,
      weldLengthMm: 84,
    }),
    profile: flatProfile(),
    thicknessMm: 10,
    plate: { finish: "mill-scale", seed: mixSeed(seed, 20), heatBandMm: 8, rust: 0.06, groundStripMm: 0 },
    beads: [
      beadOf({
        startMm: -42,
        endMm: 42,
        leftMm: -8.5,
        rightMm: 8.5,
        crownMm: 1.25,
        capPower: 1.2,
        ripple: { ...ripplesOf.weave, pitchMm: 1.9, heightMm: 0.16, lag: 0.42 },
        raggedMm: 0.3,
        unevenWidth: 0.04,
        craterDepthMm: 0.7,
        seed: mixSeed(seed, 1),
      }),
    ],
    faults: [
      { kind: "bead-shape", id: "flat-wide-bead" },
      { kind: "clamp-mark", xMm: 38, yMm: 25, diameterMm: 17, seed: mixSeed(seed, 9) },
      { kind: "silicate", x: -20, y: 3, radiusMm: 1.1, heightMm: 0.15, seed: mixSeed(seed, 4) },
      { kind: "silicate", x: 3, y: -4, radiusMm: 0.8, heightMm: 0.12, seed: mixSeed(seed, 5) },
      { kind: "silicate", x: 19, y: 1, radiusMm: 1.4, heightMm: 0.16, seed: mixSeed(seed, 6) },
      { kind: "stuck-slag", x: -6, y: 5.6, radiusMm: 2.3, heightMm: 0.3, seed: mixSeed(seed, 7) },
      {
        kind: "undercut",
        side: "left",
        fromMm: -16,
        toMm: 20,
        depthMm: 0.5,
        widthMm: 1.2,
        broken: 0.9,
        seed: mixSeed(seed, 8),
      },
      { kind: "spatter", count: 30, medianMm: 0.8, spreadMm: 8, seed: mixSeed(seed, 31) },
    ],
    bench: "concrete",
    lighting: "overhead",
    scaleObject: { kind: "disc", side: "left", placement: { xMm: 33, vMm: -23, turnDeg: 0 }, sizeMm: 20 },
    pose: poseOf({ target: [0, -4], fieldWidthMm: 108, tiltDeg: 16, azimuthDeg: 12, rollDeg: 2 }),
  });
