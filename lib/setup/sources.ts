import { cite, fromMemory, remark } from "@/lib/trade";

/** What the rules of this room lean on. */
export const gasBasics = cite("apprenticeship-notes", "seen", {
  clause: "gases and wires",
  note: "the trade reference notes agree",
});
/** They restate data sheets. */
export const coredManuals = cite("trade-reference-notes", "seen", { clause: "self-shielded set-up" });
export const jointDesign = remark(
  coredManuals,
  "that the pass count is limited was read; the number of passes is from memory",
  "memory",
);
export const dragOnSlag = cite("welding-fundamentals", "seen", {
  note: "slag processes are dragged; apprenticeship and trade reference notes agree",
});
export const stainlessBasics = remark(
  fromMemory,
  "309L is the usual filler between stainless and carbon steel",
);
export const windPublished = cite("porosity-ranking", "seen", {
  clause: "rank 2: air above about 4 to 5 mph",
});
export const zincPublished = cite("galvanised-porosity", "seen");
export const primerPublished = cite("primer-porosity", "seen");
export const waterPublished = cite("job-knowledge-42-porosity", "seen-part");
export const cleanliness = cite("common-mig-problems", "seen");
export const chromiumPublished = cite("hexavalent-chromium-guide", "seen", {
  clause: "permissible exposure limit 5 µg/m³, 8-hour average",
});
export const studyNotes = cite("apprenticeship-notes", "memory", {
  clause: "joint and gun angles",
  note: "that the gun bisects the joint was read; the tolerance is our own estimate",
});
export const prequalifiedGrooves = cite("aws-d1-1", "memory", {
  clause:
    "prequalified groove details with backing: 1/4 in root opening at 45 degrees, plus 1/4 in as fitted",
});
