"use client";

import { NewBeadHere } from "@/components/offline";
import { Workbench } from "./workbench";
import type { WorkbenchProps } from "./workbench-props";

/** A workbench for a bead that begins here: nothing is stored before the first photo or value. */
export function NewWorkbench(props: Omit<WorkbenchProps, "bead">) {
  return <NewBeadHere>{(bead) => <Workbench key={bead.id} {...props} bead={bead} />}</NewBeadHere>;
}
