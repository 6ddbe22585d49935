import type { Process } from "@/lib/trade";
import type { CauseId } from "../cause-ids";
import type { WeightClass } from "../weights";
import type { DocumentId } from "./sources";

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
  readonly documents: readonly DocumentId[];
  readonly memory: boolean;
}

const WIRE: readonly Process[] = ["FCAW-S", "FCAW-G", "GMAW"];
const ALL: readonly Process[] = ["FCAW-S", "FCAW-G", "GMAW", "SMAW", "GTAW"];
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
      ...links("S", "volt-low"),
      ...links("M", "wfs-high", "tip-feed", "input-power", "work-lead", "ctwd-long"),
    ],
    effortS: 30,
    documents: ["C2", "C9", "B13"],
    memory: false,
  },
  {
    id: "flaring-arc",
    name: "Long flaring arc",
    question: "Was the arc long, loud and flaring?",
    how: "Run a short bead on scrap and watch the arc.",
    processes: ALL,
    links: [
      ...links("S", "volt-high", "arc-long"),
      ...links("M", "polarity", "wfs-low"),
      ...links("W", "arc-blow"),
    ],
    effortS: 30,
    documents: ["B5", "C7"],
    memory: true,
  },
  {
    id: "cold-arc",
    name: "Weak arc, sluggish pool",
    question: "Was the arc weak and the pool sluggish?",
    how: "Run a short bead on scrap and watch the pool wet out.",
    processes: ALL,
    links: [
      ...links("S", "wfs-low", "input-power"),
      ...links("M", "ctwd-long", "work-lead", "base-cold-thick", "volt-low"),
    ],
    effortS: 30,
    documents: ["C25", "C1", "C8"],
    memory: true,
  },
  {
    id: "rod-sticks",
    name: "Rod freezes to the plate",
    question: "Did the rod stick to the plate?",
    how: "Strike on scrap.",
    processes: ["SMAW"],
    links: [
      ...links("S", "wfs-low"),
      ...links("M", "arc-short", "work-lead"),
      ...links("W", "damp-consumable", "input-power"),
    ],
    effortS: 20,
    documents: ["C18", "C20"],
    memory: false,
  },
  {
    id: "heavy-soot",
    name: "Heavy soot beside the bead",
    question: "Is there heavy soot beside the bead?",
    how: "Look before brushing.",
    processes: ALL,
    links: [
      ...links("S", "polarity"),
      ...links("M", "volt-high", "arc-long", "coating", "contam", "drag-excess"),
      ...links("W", "draft", "gas-low"),
    ],
    effortS: 10,
    documents: ["C2", "C12"],
    memory: true,
  },
  {
    id: "dull-grey-face",
    name: "Dull grey face",
    question: "Is the face of the bead dull and grey?",
    how: "Look after brushing lightly.",
    processes: ["FCAW-G", "GMAW", "GTAW"],
    links: [
      ...links("S", "gas-low", "draft"),
      ...links("M", "nozzle-fouled", "gas-high", "ctwd-long", "drag-excess"),
      ...links("W", "gas-wrong", "travel-fast"),
    ],
    effortS: 10,
    documents: ["B14", "B18"],
    memory: true,
  },
  {
    id: "pool-ran-ahead",
    name: "Slag or metal ran ahead of the arc",
    question: "Did slag or metal run ahead of the arc?",
    how: "Remember, or run a short bead and watch the front of the pool.",
    processes: ALL,
    links: [
      ...links("S", "pool-ahead", "travel-slow"),
      ...links("M", "push-on-slag", "downhill", "wfs-high", "pass-too-big"),
    ],
    effortS: 30,
    documents: ["B2", "B6", "A3"],
    memory: true,
  },
  {
    id: "sound-changes",
    name: "Arc sound comes and goes",
    question: "Did the sound of the arc come and go?",
    how: "Run a short bead on scrap with the hand held still, and listen.",
    processes: ALL,
    links: [
      ...links("S", "tip-feed", "work-lead"),
      ...links("M", "ctwd-uneven", "input-power", "arc-blow", "gas-low"),
    ],
    effortS: 30,
    documents: ["B34", "C36"],
    memory: true,
  },
];
