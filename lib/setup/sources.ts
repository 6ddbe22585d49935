import type { Source } from "@/lib/base";

/** Documents behind the rules of this room that are not tables of lib/trade. */
export const practice: Source = { document: "common practice, no source", confidence: "common-practice" };

export const gasBasics: Source = {
  document: "Apprenticeship study notes: gases and wires; trade reference notes on gas metal arc set-up",
  edition: "n.d.",
  confidence: "seen",
};
export const coredManuals: Source = {
  document: "Trade reference notes on self-shielded set-up, restating data sheets",
  edition: "n.d.",
  confidence: "seen",
};
export const dragOnSlag: Source = {
  document: "Welding Fundamentals, ch. 17",
  edition: "2017",
  clause: "pp. 251-261",
  confidence: "seen",
  note: "slag processes are dragged; apprenticeship and trade reference notes agree",
};
export const stainlessBasics: Source = {
  document: "trade knowledge, no text read",
  confidence: "memory",
  note: "309L is the usual filler between stainless and carbon steel",
};
export const jointDesign: Source = {
  document: "Trade reference notes on self-shielded set-up, restating data sheets",
  edition: "n.d.",
  confidence: "memory",
  note: "that the pass count is limited was read; the number of passes is from memory",
};
export const windPublished: Source = {
  document: "Trade list of porosity-related problems, ranked",
  edition: "n.d.",
  clause: "rank 2: air above about 4 to 5 mph",
  confidence: "seen",
};
export const zincPublished: Source = {
  document: "Eliminating porosity on galvanized steel, Practical Welding Today",
  edition: "Jul/Aug 2014",
  confidence: "seen",
};
export const primerPublished: Source = {
  document: "Preventing porosity on weldable primer-coated joints, trade Q&A",
  edition: "n.d.",
  confidence: "seen",
};
export const porosityTwi: Source = {
  document: "TWI Job Knowledge 42, porosity",
  edition: "n.d.",
  confidence: "seen-part",
};
export const cleanliness: Source = {
  document: "GMAW: Common MIG Problems and Remedies, Practical Welding Today",
  edition: "Sep/Oct 1997",
  confidence: "seen",
};
export const chromiumPublished: Source = {
  document: "Instructor guide on hexavalent chromium, citing the US OSHA rule of 2006",
  clause: "permissible exposure limit 5 µg/m³, 8-hour average",
  confidence: "seen",
};
export const studyNotes: Source = {
  document: "Apprenticeship study notes: joint and gun angles",
  edition: "n.d.",
  confidence: "memory",
  note: "that the gun bisects the joint was read; the tolerance is our own estimate",
};
export const prequalifiedGrooves: Source = {
  document: "AWS D1.1 prequalified groove details with backing",
  edition: "2020",
  clause: "Figure 5.1, B-U2a: 1/4 in root opening at 45 degrees, plus 1/4 in as fitted",
  confidence: "memory",
};
