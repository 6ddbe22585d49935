import { machineDoor } from "@/app/_door/machine-door";
import { measureCase, measureCaseJsonSchema, MeasureCaseSchema } from "@/lib/measure";

export const dynamic = "force-dynamic";

export const { GET, POST } = machineDoor(MeasureCaseSchema, measureCaseJsonSchema, (input) => ({
  ok: true,
  value: measureCase(input),
}));
