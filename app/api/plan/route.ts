import { machineDoor } from "@/app/_door/machine-door";

export const dynamic = "force-dynamic";

export const { GET, POST } = machineDoor("plan");
