import { z } from "zod";
import { DaySchema } from "./instrument";

/** What entitles the inspector to sign: the certificate by its number, its level, and until when it holds. */
export const QualificationSchema = z.object({
  certificate: z.string().trim().max(80).default(""),
  level: z.string().trim().max(60).default(""),
  /** The day itself is still within. */
  expiresOn: DaySchema.nullable().default(null),
});
export type Qualification = z.infer<typeof QualificationSchema>;

export const noQualification: Qualification = { certificate: "", level: "", expiresOn: null };

/** How a certificate stood on the day of the inspection. Days compare as texts. */
export type CertificateStanding = "valid" | "expired" | "expiry-unknown" | "none";

/** `day` null: the day of the inspection is not recorded, which is a point of its own. */
export function certificateOn(
  qualification: Qualification | undefined,
  day: string | null,
): CertificateStanding {
  if (!qualification || qualification.certificate === "") return "none";
  if (qualification.expiresOn === null || day === null) return "expiry-unknown";
  return qualification.expiresOn < day ? "expired" : "valid";
}

/** "VT-204, level 2, valid until 2027-05-01"; empty where nothing was recorded. */
export function qualificationText(qualification: Qualification | undefined): string {
  if (!qualification) return "";
  const { certificate, level, expiresOn } = qualification;
  return [
    certificate && `certificate ${certificate}`,
    level && `level ${level.replace(/^level /i, "")}`,
    expiresOn && `valid until ${expiresOn}`,
  ]
    .filter(Boolean)
    .join(", ");
}
