import type { Source } from "@/lib/base";
import { cite } from "@/lib/trade";
import type { SetupField } from "@/lib/setup";
import type { CardCode } from "../card";

/** A variable whose change a code may answer with a new qualification. How far it may change is the code's to say. */
export interface Essential {
  readonly name: string;
  /** Fields of the set-up that say where it stands; none: it is asked for on paper. */
  readonly fields: readonly SetupField[];
  readonly source: Source;
}

const d11 = (clause: string): Source => cite("aws-d1-1", "memory", { clause, note: "check your code" });
const iso = (clause: string): Source => cite("iso-15614-1", "memory", { clause, note: "check your code" });
const requalify = "qualification, table of essential variables for PQR";

/** From memory, so without a limit: a list of what to look up, never of how far one may go. */
export const essentials: Readonly<Record<CardCode, readonly Essential[]>> = {
  "aws-d1-1": [
    {
      name: "Process and electrode classification",
      fields: ["process", "electrodeClass"],
      source: d11(requalify),
    },
    { name: "Electrode diameter", fields: ["electrodeDiameterMm"], source: d11(requalify) },
    { name: "Polarity and kind of current", fields: ["polarity"], source: d11(requalify) },
    { name: "Shielding gas and its flow", fields: ["gas", "gasFlowLPerMin"], source: d11(requalify) },
    { name: "Wire feed or amperes", fields: ["wireFeedMPerMin", "amps"], source: d11(requalify) },
    { name: "Volts", fields: ["volts"], source: d11(requalify) },
    { name: "Travel speed", fields: ["travelSpeedMmPerMin"], source: d11(requalify) },
    { name: "Position, and which way vertical", fields: ["position", "progression"], source: d11(requalify) },
    { name: "Joint and groove as cut", fields: ["joint", "fitUpGapMm"], source: d11(requalify) },
    {
      name: "Thickness of the plate",
      fields: ["thicknessMm"],
      source: d11("qualification, ranges of thickness"),
    },
    {
      name: "Base metal group",
      fields: ["baseMetal"],
      source: d11("approved base metals and filler metals"),
    },
    {
      name: "Preheat and interpass temperature",
      fields: [],
      source: d11("minimum preheat and interpass temperature"),
    },
    { name: "Heat after welding", fields: [], source: d11(requalify) },
  ],
  "iso-15614-1": [
    {
      name: "Process and degree of mechanisation",
      fields: ["process"],
      source: iso("range of qualification, welding process"),
    },
    {
      name: "Filler designation and make",
      fields: ["electrodeClass"],
      source: iso("range of qualification, filler material"),
    },
    {
      name: "Filler size",
      fields: ["electrodeDiameterMm"],
      source: iso("range of qualification, filler size"),
    },
    {
      name: "Kind of current and polarity",
      fields: ["polarity"],
      source: iso("range of qualification, type of current"),
    },
    { name: "Shielding gas", fields: ["gas"], source: iso("range of qualification, shielding gas") },
    {
      name: "Heat input or arc energy",
      fields: ["volts", "amps", "travelSpeedMmPerMin"],
      source: iso("range of qualification, heat input"),
    },
    {
      name: "Mode of transfer",
      fields: ["transfer"],
      source: iso("range of qualification, process-specific"),
    },
    {
      name: "Position",
      fields: ["position", "progression"],
      source: iso("range of qualification, welding positions"),
    },
    { name: "Type of joint", fields: ["joint"], source: iso("range of qualification, type of joint") },
    { name: "Thickness", fields: ["thicknessMm"], source: iso("range of qualification, material thickness") },
    {
      name: "Parent material group",
      fields: ["baseMetal"],
      source: iso("range of qualification, parent material"),
    },
    {
      name: "Preheat, interpass and post-weld heat",
      fields: [],
      source: iso("range of qualification, preheat and interpass temperature"),
    },
  ],
};
