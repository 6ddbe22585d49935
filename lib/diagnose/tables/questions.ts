import type { SetupField } from "@/lib/setup";
import type { DocumentId } from "@/lib/trade";
import type { CauseId } from "../cause-ids";

/** An inspection that looks at one thing: its answers are weighed by how likely each is in each state of that thing. */
export interface Question {
  readonly id: string;
  readonly question: string;
  readonly how: string;
  /** States of one variable, in its own order; "in order" comes before them in every row. */
  readonly causes: readonly CauseId[];
  readonly answers: readonly QuestionAnswer[];
  /** A set-up field that already answers it. */
  readonly field: SetupField | null;
  readonly effortS: number;
  /** Who names the look; how likely each answer is stands in none of them. */
  readonly documents: readonly DocumentId[];
}

export interface QuestionAnswer {
  readonly id: string;
  readonly text: string;
  /** P(answer | in order), P(answer | first cause), ... : each column sums to 1 over the answers. Own estimates. */
  readonly likelihood: readonly number[];
}

type AnswerRow = readonly [id: string, text: string, ...likelihood: number[]];
type Rest = { field?: SetupField; effortS: number; documents?: readonly DocumentId[] };

const ask = (
  id: string,
  causes: readonly CauseId[],
  question: string,
  how: string,
  rest: Rest,
  answers: readonly AnswerRow[],
): Question => ({
  id,
  causes,
  question,
  how,
  field: rest.field ?? null,
  effortS: rest.effortS,
  documents: rest.documents ?? [],
  answers: answers.map(([answerId, text, ...likelihood]) => ({ id: answerId, text, likelihood })),
});

/** A look with two outcomes that is right nine times in ten; the first answer is the fault. */
const yesNo = (fault: string, good: string, seen = 0.9, falseAlarm = 0.04): readonly AnswerRow[] => [
  ["fault", fault, falseAlarm, seen],
  ["good", good, 1 - falseAlarm, 1 - seen],
];

export const questions: readonly Question[] = [
  ask(
    "polarity-lugs",
    ["polarity"],
    "Is the gun on the pole its class asks for?",
    "Switch off and unplug, then read the lugs: which one does the gun cable sit on?",
    { field: "polarity", effortS: 20, documents: ["flux-cored-troubleshooting", "trade-reference-notes"] },
    yesNo("On the other pole", "On the right pole", 0.98, 0.01),
  ),
  ask(
    "stick-out",
    ["ctwd-long", "ctwd-short"],
    "How far is it from tip to work?",
    "Hold the gun as you weld, power off, and measure from contact tip to plate.",
    {
      field: "ctwdMm",
      effortS: 30,
      documents: ["flux-cored-troubleshooting", "trade-reference-notes", "welding-fundamentals"],
    },
    [
      ["long", "Longer than the wire asks for", 0.04, 0.9, 0.02],
      ["right", "As the wire asks for", 0.92, 0.08, 0.13],
      ["short", "Shorter than the wire asks for", 0.04, 0.02, 0.85],
    ],
  ),
  ask(
    "stick-out-steady",
    ["ctwd-uneven"],
    "Did the gun keep its height all along?",
    "Have someone watch, or make a dry run along the joint.",
    { effortS: 45, documents: ["tungsten-arc-handbook"] },
    yesNo("It rose and fell", "It kept its height", 0.8, 0.075),
  ),
  ask(
    "travel-pace",
    ["travel-fast", "travel-slow"],
    "How fast did you travel?",
    "Time a bead and divide its length by the time; compare with a bead that came out well.",
    { field: "travelSpeedMmPerMin", effortS: 60, documents: ["welding-fundamentals", "mig-parameters"] },
    [
      ["fast", "Faster than usual", 0.05, 0.78, 0.03],
      ["right", "As usual", 0.9, 0.19, 0.19],
      ["slow", "Slower than usual", 0.05, 0.03, 0.78],
    ],
  ),
  ask(
    "travel-steady",
    ["travel-uneven"],
    "Was the pace steady?",
    "Look at the ripples: are they evenly spaced?",
    { effortS: 20, documents: ["tungsten-arc-handbook"] },
    yesNo("It hurried and waited", "It was steady", 0.85, 0.075),
  ),
  ask(
    "gun-side-angle",
    ["work-angle"],
    "Did the gun bisect the joint, seen along the weld?",
    "Hold the gun as you weld and look along the joint.",
    {
      field: "workAngleDeg",
      effortS: 20,
      documents: ["apprenticeship-notes", "visual-discontinuities-handout"],
    },
    yesNo("It leaned to one plate", "It bisected the joint", 0.85, 0.06),
  ),
  ask(
    "wire-aim",
    ["placement"],
    "Did the wire stay on the joint line?",
    "Dry run: does the wire end follow the root, or for a stringer the toe of the last bead?",
    { effortS: 30, documents: ["visual-discontinuities-handout", "self-shielded-best-practices"] },
    yesNo("It left the line", "It stayed on the line", 0.85, 0.06),
  ),
  ask(
    "gun-lean",
    ["drag-excess", "push-on-slag", "push-excess"],
    "How did the gun lean along the weld?",
    "Hold the gun as you weld and look at it from the side.",
    {
      field: "travelAngleDeg",
      effortS: 20,
      documents: ["welding-fundamentals", "self-shielded-best-practices"],
    },
    [
      ["steep-drag", "Dragged, leaning far back", 0.04, 0.88, 0.01, 0.01],
      ["as-asked", "As the process asks for", 0.93, 0.1, 0.04, 0.11],
      ["push", "Pushed", 0.03, 0.02, 0.95, 0.88],
    ],
  ),
  ask(
    "volts-against-feed",
    ["volt-high", "volt-low"],
    "How do the volts stand to the wire feed?",
    "Compare both dials with the wire's data sheet, or read the meter while welding.",
    { field: "volts", effortS: 45, documents: ["mig-parameters", "trade-reference-notes"] },
    [
      ["high", "Above the sheet", 0.05, 0.85, 0.02],
      ["right", "On the sheet", 0.9, 0.13, 0.13],
      ["low", "Below the sheet", 0.05, 0.02, 0.85],
    ],
  ),
  ask(
    "arc-length",
    ["arc-long", "arc-short"],
    "How long was the arc?",
    "About the core diameter is right; listen for a steady crackle.",
    { effortS: 20, documents: ["apprenticeship-notes", "covered-slides"] },
    [
      ["long", "Longer than the core", 0.06, 0.85, 0.02],
      ["right", "About the core", 0.9, 0.13, 0.15],
      ["short", "Crowded into the pool", 0.04, 0.02, 0.83],
    ],
  ),
  ask(
    "current-set",
    ["wfs-high", "wfs-low"],
    "How does the current or wire feed stand to the plate?",
    "Compare the dial with the electrode's data sheet and the plate thickness.",
    { field: "wireFeedMPerMin", effortS: 45, documents: ["small-wire-manual-settings", "mig-parameters"] },
    [
      ["high", "Above the sheet", 0.05, 0.85, 0.02],
      ["right", "On the sheet", 0.9, 0.13, 0.13],
      ["low", "Below the sheet", 0.05, 0.02, 0.85],
    ],
  ),
  ask(
    "gas-flow-read",
    ["gas-low", "gas-high"],
    "What gas flows at the nozzle?",
    "Press the purge, or trigger with the drive roll released so that no live wire comes; read the meter, look at the cylinder and soap the joints.",
    {
      field: "gasFlowLPerMin",
      effortS: 45,
      documents: ["apprenticeship-notes", "porosity-ranking", "weld-flaws-handout"],
    },
    [
      ["low", "Little or none, or it leaks", 0.015, 0.92, 0.01],
      ["right", "As the process asks for", 0.96, 0.07, 0.14],
      ["high", "Far more", 0.025, 0.01, 0.85],
    ],
  ),
  ask(
    "gas-label",
    ["gas-wrong"],
    "Is it the gas the wire was made for?",
    "Compare the cylinder's label with the class on the spool.",
    { field: "gas", effortS: 20, documents: ["trade-reference-notes", "mig-troubleshooting"] },
    yesNo("Another gas", "The right gas", 0.97, 0.02),
  ),
  ask(
    "gas-preflow",
    ["no-preflow"],
    "Does gas flow before the arc?",
    "Listen at the nozzle as you touch the trigger.",
    { effortS: 15 },
    yesNo("Not before", "It does", 0.9, 0.05),
  ),
  ask(
    "draft-feel",
    ["draft"],
    "Is there wind or a fan on the work?",
    "Hang a strip of paper at the joint; look at how the fume moves.",
    { field: "outdoors", effortS: 15, documents: ["porosity-ranking"] },
    yesNo("Air moves", "Still air", 0.92, 0.05),
  ),
  ask(
    "nozzle-look",
    ["nozzle-fouled"],
    "Is the nozzle clean inside?",
    "Take it off and look through it and at the diffuser.",
    { effortS: 30, documents: ["porosity-ranking", "weld-flaws-handout"] },
    yesNo("Fouled or loose", "Clean", 0.93, 0.03),
  ),
  ask(
    "plate-clean",
    ["contam"],
    "Was the joint bright metal before welding?",
    "Look at an unwelded stretch: oil, paint, rust, scale? Wipe it with a white cloth.",
    { field: "surface", effortS: 30, documents: ["common-mig-problems", "job-knowledge-42-porosity"] },
    yesNo("Dirty, or the wire was", "Bright", 0.93, 0.075),
  ),
  ask(
    "plate-coating",
    ["coating"],
    "Is there zinc, primer or plating on the plate or its cut edge?",
    "Scratch an unwelded stretch, edges too.",
    { field: "surface", effortS: 30, documents: ["galvanised-porosity", "primer-porosity"] },
    yesNo("There is", "Bare steel", 0.97, 0.015),
  ),
  ask(
    "plate-dry",
    ["moisture-plate"],
    "Was the plate cold or damp?",
    "Feel it; look for dew, and between the plates of a lap.",
    { field: "surface", effortS: 20, documents: ["porosity-ranking", "job-knowledge-42-porosity"] },
    yesNo("Cold or damp", "Dry and at room temperature", 0.9, 0.05),
  ),
  ask(
    "consumable-dry",
    ["damp-consumable"],
    "How were wire or electrodes kept?",
    "Look at the spool for rust and dullness; ask how long the packet was open.",
    { effortS: 30, documents: ["inspection-practice-papers", "covered-defects-guide", "diagnosing-flux"] },
    yesNo("Left open or rusty", "Dry, from a closed packet or the oven", 0.92, 0.05),
  ),
  ask(
    "gap-look",
    ["gap", "groove-tight"],
    "How did the parts fit?",
    "Look at an unwelded stretch or the back of the joint; try a feeler.",
    { field: "fitUpGapMm", effortS: 45, documents: ["job-knowledge-67-shape", "vocational-model-answers"] },
    [
      ["wide", "A gap, or too little root face", 0.04, 0.9, 0.02],
      ["right", "As drawn", 0.935, 0.09, 0.13],
      ["tight", "Too narrow", 0.025, 0.01, 0.85],
    ],
  ),
  ask(
    "fit-line",
    ["misfit"],
    "Were the plates in line before welding?",
    "Lay a straight edge across an unwelded stretch.",
    { effortS: 30 },
    yesNo("Out of line", "In line", 0.95, 0.025),
  ),
  ask(
    "slag-cleaned",
    ["slag-left"],
    "Was every bead chipped and brushed before the next?",
    "Look at the toes of the bead below.",
    { effortS: 20, documents: ["practice-questions", "self-shielded-best-practices"] },
    yesNo("Not everywhere", "Every one", 0.9, 0.05),
  ),
  ask(
    "slag-when",
    ["slag-hot"],
    "When was the slag taken off?",
    "Remember: was the bead still glowing?",
    { effortS: 10, documents: ["stainless-colour-discussion"] },
    yesNo("While still glowing", "After it had cooled", 0.93, 0.05),
  ),
  ask(
    "weave-look",
    ["weave"],
    "Was the bead woven?",
    "Look at the ripples: do they swing from toe to toe?",
    { effortS: 15, documents: ["covered-fault-table", "glossary-undercut-craters"] },
    yesNo("Woven wide or without a pause", "Stringer, or with a pause at the toes", 0.92, 0.035),
  ),
  ask(
    "arc-end",
    ["crater-unfilled"],
    "How was the arc ended?",
    "Look at the last crater: dished, or level with the face?",
    { effortS: 10, documents: ["crack-chart", "practice-questions"] },
    yesNo("Pulled straight off", "Gone back and filled", 0.9, 0.05),
  ),
  ask(
    "run-off",
    ["no-run-off"],
    "Did the bead end on a tab?",
    "Look where the crater lies.",
    { effortS: 10, documents: ["gmaw-fcaw-handbook"] },
    yesNo("At the edge of the work", "On a tab, or inside the joint", 0.9, 0.12),
  ),
  ask(
    "tip-look",
    ["tip-feed"],
    "Is the tip round and does the wire run freely?",
    "Power off: take the tip out and look at its bore; pull wire by hand from the gun.",
    { effortS: 60, documents: ["contact-tip-wear", "navedtra-14119"] },
    yesNo("Oval, or the wire jerks", "Round, and it runs freely", 0.9, 0.04),
  ),
  ask(
    "wire-curl",
    ["wire-cast"],
    "Does the wire leave the tip straight?",
    "Run out a hand's length of wire and look.",
    { effortS: 20 },
    yesNo("It curls away", "Straight", 0.9, 0.04),
  ),
  ask(
    "wire-end",
    ["wire-ball"],
    "Was the wire snipped before the start?",
    "Look at the wire end after a stop.",
    { effortS: 10, documents: ["trade-reference-notes"] },
    yesNo("Ball left on", "Snipped", 0.95, 0.2),
  ),
  ask(
    "rod-tip",
    ["strike-tip"],
    "Was the covering whole at the tip of the rod?",
    "Look at the next rod, and at one that was struck before.",
    { effortS: 10, documents: ["low-hydrogen-porosity"] },
    yesNo("Bare tip", "Whole", 0.9, 0.04),
  ),
  ask(
    "strike-place",
    ["strike-outside"],
    "Where was the arc struck?",
    "Look for a burn beside the joint.",
    { effortS: 10, documents: ["apprenticeship-notes"] },
    yesNo("Outside the joint", "In the joint", 0.95, 0.025),
  ),
  ask(
    "work-clamp",
    ["work-lead"],
    "How does the work clamp sit?",
    "Feel whether it is hot; look for bright metal under it and a loose screw.",
    { effortS: 30, documents: ["inconsistent-arc-guide", "work-clamp-notes"] },
    yesNo("Loose, hot or on rust", "Tight on bright metal", 0.88, 0.05),
  ),
  ask(
    "supply",
    ["input-power"],
    "How is the machine fed?",
    "Look at the cord: long and thin? Is other load on the same line? A qualified person measures the mains under load.",
    { effortS: 45, documents: ["small-machine-test", "apprenticeship-notes"] },
    yesNo("Long thin cord, or a weak supply", "Straight from a strong supply", 0.92, 0.05),
  ),
  ask(
    "arc-pulled",
    ["arc-blow"],
    "Is the arc pulled to one side?",
    "Watch it near ends and corners; turn the work lead to the other end and watch again.",
    { effortS: 60, documents: ["inspection-practice-papers", "classroom-study-guides"] },
    yesNo("Pulled aside", "Straight", 0.9, 0.02),
  ),
  ask(
    "rod-size",
    ["electrode-large"],
    "Does the rod reach into the corner?",
    "Compare rod and plate thickness.",
    { field: "electrodeDiameterMm", effortS: 15, documents: ["covered-fault-table", "covered-fault-page"] },
    yesNo("Too thick for it", "It fits", 0.92, 0.04),
  ),
  ask(
    "plate-heat",
    ["base-cold-thick", "thin-base"],
    "How does the plate stand to the heat?",
    "Compare plate thickness and temperature with what wire and machine are made for.",
    { field: "thicknessMm", effortS: 30, documents: ["small-wire-manual-settings", "apprenticeship-notes"] },
    [
      ["thick", "Thick or cold", 0.05, 0.92, 0.01],
      ["right", "It suits", 0.91, 0.07, 0.07],
      ["thin", "Thin", 0.04, 0.01, 0.92],
    ],
  ),
  ask(
    "arc-in-pool",
    ["pool-ahead"],
    "Where in the pool did the arc sit?",
    "Run a short bead and watch: on the front edge, or further back?",
    { effortS: 45, documents: ["aviation-fusion-article", "job-knowledge-41-fusion"] },
    yesNo("Behind the front edge", "On the front edge", 0.85, 0.06),
  ),
  ask(
    "pass-size",
    ["pass-too-big"],
    "How big was the single pass?",
    "Measure the leg of one pass.",
    { effortS: 30, documents: ["welding-inspection-of-steels", "covered-multi-run-manual"] },
    yesNo("More than one pass should carry", "Moderate", 0.9, 0.04),
  ),
  ask(
    "weld-direction",
    ["downhill"],
    "Was it welded downhill?",
    "Look at the ripples: their tails point back to the start.",
    { field: "progression", effortS: 10, documents: ["steel-connection-handbook"] },
    yesNo("Downhill", "Not downhill", 0.97, 0.02),
  ),
  ask(
    "groove-shape",
    ["bead-shape"],
    "Is the bead deep and narrow, or sharp at the toes?",
    "Look at the end of the bead or at a cut.",
    { effortS: 120, documents: ["crack-chart", "steel-connection-handbook"] },
    yesNo("Deep, or sharp at the toes", "About as wide as deep, flat toes", 0.85, 0.06),
  ),
  ask(
    "certificates",
    ["composition"],
    "Are plate and filler known and matched?",
    "Look up the plate's certificate and the filler asked for.",
    { effortS: 300, documents: ["apprenticeship-notes", "crack-chart"] },
    yesNo("Unknown, or not matched", "Known and matched", 0.92, 0.075),
  ),
  ask(
    "joint-held",
    ["restraint"],
    "Was the joint clamped rigid?",
    "Look at clamps, fixtures and heavy sections.",
    { effortS: 20 },
    yesNo("Rigid", "Free to move", 0.9, 0.075),
  ),
  ask(
    "interpass",
    ["heat-interpass"],
    "How warm was the part when the bead began?",
    "Measure with a contact thermometer or temperature stick beside the joint.",
    { effortS: 60, documents: ["stainless-colours", "trade-reference-notes"] },
    yesNo("Hot from the pass before", "Cooled", 0.9, 0.05),
  ),
  ask(
    "back-purge",
    ["no-purge"],
    "Was the back purged?",
    "Look at the hoses and dams behind the root.",
    { effortS: 15, documents: ["trade-reference-notes"] },
    yesNo("Not purged, or not long enough", "Purged, or the root does not matter", 0.95, 0.025),
  ),
  ask(
    "wire-rating",
    ["single-pass-wire"],
    "Is the wire rated for more than one pass?",
    "Read the class on the spool and look it up.",
    { field: "electrodeClass", effortS: 45, documents: ["trade-reference-notes"] },
    yesNo("Single-pass, used in layers", "Multi-pass, or one pass only", 0.95, 0.015),
  ),
  ask(
    "crack-when",
    ["hydrogen"],
    "When did the crack appear?",
    "Look again after a day; do not weld over it meanwhile.",
    { effortS: 600, documents: ["apprenticeship-notes"] },
    yesNo("Hours or days later", "At once", 0.85, 0.025),
  ),
  ask(
    "restart-made",
    ["restart"],
    "How was the bead taken up again?",
    "Remember: was the crater chipped first, and where was the arc struck?",
    { effortS: 10 },
    yesNo(
      "Struck straight into the old crater",
      "Chipped, struck ahead and brought back, or one run",
      0.9,
      0.06,
    ),
  ),
  ask(
    "wire-position",
    ["position-unsuited"],
    "Is the wire made for this position?",
    "Read the class on the spool: its position digit, and the data sheet.",
    { field: "electrodeClass", effortS: 30 },
    yesNo("Not for this position", "It is", 0.95, 0.015),
  ),
];
