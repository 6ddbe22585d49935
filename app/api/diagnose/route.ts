import { machineDoor } from "@/app/_door/machine-door";
import { diagnose, diagnoseJsonSchema, DiagnoseInputSchema, diagnoseSentences } from "@/lib/diagnose";

export const dynamic = "force-dynamic";

export const { GET, POST } = machineDoor(DiagnoseInputSchema, diagnoseJsonSchema, (input) => {
  const diagnosis = diagnose(input);
  if (diagnosis.ok) return diagnosis;
  const lines = diagnosis.issues.map(
    ({ code, path, data }) => `${path.join(".") || "(top)"}: ${diagnoseSentences[code](data)}`,
  );
  return { ok: false, lines };
});
