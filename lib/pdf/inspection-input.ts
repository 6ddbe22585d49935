import type { PaperUnits, Signed, SignedRecord } from "@/lib/inspect";
import type { ScenePalette } from "@/lib/marks";
import type { PhotoPaint } from "./draw-photo";

/** All that an inspection report is drawn from. */
export interface InspectionPdfInput {
  readonly record: SignedRecord;
  /** SHA-256 of the signed text; of the record without a signature where it is a draft. */
  readonly digest: string;
  /** How far the signed text can be relied on, and the signer's name where it may stand there; null: a draft. */
  readonly signed: Signed | null;
  /** JPEG bytes by the photo's SHA-256, upright and free of metadata. */
  readonly photos: ReadonlyMap<string, Uint8Array>;
  /** Where the record is found by others; null: no public address is set up, so none is printed. */
  readonly recordUrl: string | null;
  /** One system of units, or both. */
  readonly units: PaperUnits;
  readonly palette: ScenePalette;
  /** ISO 8601. */
  readonly createdAt: string;
}

/** What it takes to draw a bead: its pictures, the inks, and the units its figures are told in. */
export interface InspectionPaint extends PhotoPaint {
  readonly units: PaperUnits;
}
