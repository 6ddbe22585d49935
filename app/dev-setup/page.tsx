"use client";
import { useState } from "react";
import { SavedSetups, SetupForm } from "@/components/setup";
import { checkSetup, emptyRunSetup, type RunSetup } from "@/lib/setup";
import { inch, metric } from "@/lib/units";
export default function Page() {
  const [setup, setSetup] = useState<RunSetup>(emptyRunSetup);
  const [u, setU] = useState(metric);
  return (
    <main style={{ padding: 16, maxWidth: 620, margin: "0 auto", display: "grid", gap: 18 }}>
      <button id="units" onClick={() => setU(u === metric ? inch : metric)}>
        units
      </button>
      <SavedSetups
        saved={[{ id: "a", name: "Shop T-joint, 230 V", setup }]}
        last={setup}
        onApply={setSetup}
        onSave={async () => ({ ok: true })}
        onDelete={async () => ({ ok: true })}
      />
      <SetupForm setup={setup} onChange={setSetup} units={u} findings={checkSetup(setup)} />
      <pre id="json" style={{ whiteSpace: "pre-wrap", overflowWrap: "anywhere", minWidth: 0 }}>
        {JSON.stringify(setup)}
      </pre>
    </main>
  );
}
