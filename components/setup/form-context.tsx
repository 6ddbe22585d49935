"use client";

import { createContext, use } from "react";
import { invariant } from "@/lib/base";
import type { RunSetup, SetupField, SetupFinding } from "@/lib/setup";
import type { ParameterWindow } from "@/lib/trade";
import type { UnitPreferences } from "@/lib/units";

export interface FormState {
  /** Makes ids unique on the page; the control of a field has the id `${prefix}-${field}`. */
  readonly prefix: string;
  readonly setup: RunSetup;
  readonly set: (change: Partial<RunSetup>) => void;
  readonly units: UnitPreferences;
  readonly findings: readonly SetupFinding[];
  readonly window: ParameterWindow | null;
}

export const FormContext = createContext<FormState | null>(null);

export function useForm(): FormState {
  const form = use(FormContext);
  invariant(form !== null, "a set-up field stands outside a SetupForm");
  return form;
}

export const controlId = (prefix: string, field: SetupField) => `${prefix}-${field}`;
export const notesId = (prefix: string, field: SetupField) => `${prefix}-${field}-notes`;

/** What the check has to say at one field: findings stand at the first field they concern. */
export function findingsAt(findings: readonly SetupFinding[], field: SetupField): readonly SetupFinding[] {
  return findings.filter((found) => found.fields[0] === field);
}
