import type { Process } from "@/lib/trade";
import type { CauseId } from "../cause-ids";
import type { WeightClass } from "../weights";
import type { Ground } from "../witness";
import { ALL, WIRE } from "./process-groups";

/** Something noticed while welding that several causes can make: a sign like an imperfection, known by asking. */
export const symptomIds = [
  "stubbing",
  "flaring-arc",
  "cold-arc",
  "rod-sticks",
  "heavy-soot",
  "dull-grey-face",
  "pool-ran-ahead",
  "sound-changes",
  "after-wire-change",
  "pool-too-big",
] as const;
export type SymptomId = (typeof symptomIds)[number];

export interface SymptomLink {
  readonly cause: CauseId;
  readonly weight: WeightClass;
}

export interface Symptom {
  readonly id: SymptomId;
  readonly name: string;
  readonly question: string;
  readonly how: string;
  readonly processes: readonly Process[];
  readonly links: readonly SymptomLink[];
  readonly effortS: number;
  readonly witnesses: readonly Ground[];
}

const links = (weight: WeightClass, ...causes: readonly CauseId[]): readonly SymptomLink[] =>
  causes.map((cause) => ({ cause, weight }));

export const symptoms: readonly Symptom[] = [
  {
    id: "stubbing",
    name: "Wire stubs and pushes the gun back",
    question: "Did the wire stub and push the gun back?",
    how: "Run a short bead on scrap and feel the gun.",
    processes: WIRE,
    links: [
      ...links("strong", "volt-low"),
      ...links("middling", "wfs-high", "tip-feed", "input-power", "work-lead", "ctwd-long"),
    ],
    effortS: 30,
    witnesses: ["trade-reference-notes", "small-wire-manual-settings", "mig-parameters"],
  },
  {
    id: "flaring-arc",
    name: "Long flaring arc",
    question: "Was the arc long, loud and flaring?",
    how: "Run a short bead on scrap and watch the arc.",
    processes: ALL,
    links: [
      ...links("strong", "volt-high", "arc-long"),
      ...links("middling", "polarity", "wfs-low"),
      ...links("weak", "arc-blow"),
    ],
    effortS: 30,
    witnesses: ["gas-marks", "covered-trouble-chart", "memory"],
  },
  {
    id: "cold-arc",
    name: "Weak arc, sluggish pool",
    question: "Was the arc weak and the pool sluggish?",
    how: "Run a short bead on scrap and watch the pool wet out.",
    processes: ALL,
    links: [
      ...links("strong", "wfs-low", "input-power"),
      ...links("middling", "ctwd-long", "work-lead", "base-cold-thick", "volt-low"),
    ],
    effortS: 30,
    witnesses: ["small-machine-test", "apprenticeship-notes", "small-wire-manual-extension", "memory"],
  },
  {
    id: "rod-sticks",
    name: "Rod freezes to the plate",
    question: "Did the rod stick to the plate?",
    how: "Strike on scrap.",
    processes: ["SMAW"],
    links: [
      ...links("strong", "wfs-low"),
      ...links("middling", "arc-short", "work-lead"),
      ...links("weak", "damp-consumable", "input-power"),
    ],
    effortS: 20,
    witnesses: ["inspection-practice-papers", "classroom-study-guides"],
  },
  {
    id: "heavy-soot",
    name: "Heavy soot beside the bead",
    question: "Is there heavy soot beside the bead?",
    how: "Look before brushing.",
    processes: ALL,
    links: [
      ...links("strong", "polarity"),
      ...links("middling", "volt-high", "arc-long", "coating", "contam", "drag-excess"),
      ...links("weak", "draft", "gas-low"),
    ],
    effortS: 10,
    witnesses: ["trade-reference-notes", "flux-cored-troubleshooting", "memory"],
  },
  {
    id: "dull-grey-face",
    name: "Dull grey face",
    question: "Is the face of the bead dull and grey?",
    how: "Look after brushing lightly.",
    processes: ["FCAW-G", "GMAW", "GTAW"],
    links: [
      ...links("strong", "gas-low", "draft"),
      ...links("middling", "nozzle-fouled", "gas-high", "ctwd-long", "drag-excess"),
      ...links("weak", "gas-wrong", "travel-fast"),
    ],
    effortS: 10,
    witnesses: ["mig-handbook", "dull-stainless", "memory"],
  },
  {
    id: "pool-ran-ahead",
    name: "Slag or metal ran ahead of the arc",
    question: "Did slag or metal run ahead of the arc?",
    how: "Remember, or run a short bead and watch the front of the pool.",
    processes: ALL,
    links: [
      ...links("strong", "pool-ahead", "travel-slow"),
      ...links("middling", "push-on-slag", "downhill", "wfs-high", "pass-too-big"),
    ],
    effortS: 30,
    witnesses: ["welding-fundamentals", "self-shielded-best-practices", "job-knowledge-41-fusion", "memory"],
  },
  {
    id: "sound-changes",
    name: "Arc sound comes and goes",
    question: "Did the sound of the arc come and go?",
    how: "Run a short bead on scrap with the hand held still, and listen.",
    processes: ALL,
    links: [
      ...links("strong", "tip-feed", "work-lead"),
      ...links("middling", "ctwd-uneven", "input-power", "arc-blow", "gas-low"),
    ],
    effortS: 30,
    witnesses: ["contact-tip-wear", "inconsistent-arc-guide", "memory"],
  },
  {
    id: "after-wire-change",
    name: "Began with a change of wire",
    question: "Did it begin after a change of wire or spool?",
    how: "Remember, or look at the log of the machine.",
    processes: WIRE,
    links: [
      ...links("strong", "polarity"),
      ...links("middling", "gas-wrong", "tip-feed", "wire-cast"),
      ...links("weak", "single-pass-wire", "damp-consumable"),
    ],
    effortS: 10,
    witnesses: ["memory"],
  },
  {
    id: "pool-too-big",
    name: "Pool too big to hold",
    question: "Was the pool big and hard to hold?",
    how: "Remember, or run a short bead and watch how far it reaches behind the arc.",
    processes: ALL,
    links: [
      ...links("strong", "wfs-high", "travel-slow"),
      ...links("middling", "pass-too-big", "heat-interpass"),
      ...links("weak", "volt-high", "thin-base", "gap"),
    ],
    effortS: 20,
    witnesses: ["memory"],
  },
];
