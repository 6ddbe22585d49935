"use client";

import { ShareButton } from "@/components/ui";

/** The sheet as a file in the phone's share sheet. */
export function SharePdf({ beadId, number }: { beadId: string; number: number }) {
  const make = async () => {
    const answer = await fetch(`/api/beads/${beadId}/sheet.pdf`);
    if (!answer.ok) throw new Error("no sheet");
    return new File([await answer.blob()], `bead-${number}.pdf`, { type: "application/pdf" });
  };
  return (
    <ShareButton make={make} title={`Bead ${number}`}>
      Share
    </ShareButton>
  );
}
