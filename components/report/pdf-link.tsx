import { FileText } from "lucide-react";
import { buttonClass } from "@/components/ui";

/** A paper of a bead as a file to keep or hand out; opens in the browser's own reader. */
export function PdfLink({ beadId, paper = "sheet" }: { beadId: string; paper?: "sheet" | "card" }) {
  // The header turns its links white; this one is a button on white.
  return (
    <a href={`/api/beads/${beadId}/${paper}.pdf`} className={buttonClass()} style={{ color: "var(--ink)" }}>
      <FileText size={20} aria-hidden="true" /> PDF
    </a>
  );
}
