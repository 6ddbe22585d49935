import { keyWords, qualificationText, ranBySigner, signedRole, signerWords } from "@/lib/inspect";
import { dayText } from "@/lib/report";
import { standingTitle } from "@/lib/signature";
import { drawHeading, flowText, HEADING_HEIGHT, type Flow } from "./flow";
import type { InspectionPdfInput } from "./inspection-input";
import { layText, run, type Run } from "./lay-text";
import { BODY_WIDTH, GREY } from "./page";

const GAP = 2;

/** Who signed, what entitles them, which revision and why, and how whoever holds the paper finds out whether it is so. */
function lines(input: InspectionPdfInput): readonly Run[] {
  const { record, signed, digest } = input;
  const { signature } = record;
  const say = (text: string) => run(text, "text", 9);
  const small = (text: string) => run(text, "text", 7.5, GREY.words);
  const certificate =
    qualificationText(record.draft.qualification ?? undefined) || "certificate not recorded";
  if (!signature || !signed)
    return [
      run("DRAFT, not signed. Nobody has put their name to this.", "strong", 10.5),
      say(`Whoever signs: ${certificate}.`),
      small(`SHA-256 of the draft ${digest}`),
    ];
  const { signer, signedAt, revision, reason } = signature;
  const key = keyWords(signature);
  const ran = ranBySigner(record, signature);
  return [
    run(`Signer: ${signerWords(signed, signature)}.`, "strong", 10.5),
    say(`${signedRole(signed)} Inspector's ${certificate}.`.trim()),
    ...(ran ? [run(ran, "strong", 9)] : []),
    say(`${standingTitle(signed.standing)}. ${dayText(signedAt)}, ${signedAt.slice(11, 19)} UTC.`),
    say(`Revision ${revision}. ${reason ? `Reason of this revision: ${reason}` : "The first."}`),
    ...(key ? [small(key)] : []),
    small(`SHA-256 of the signed text ${digest}`),
    ...(signature.previousDigest
      ? [small(`SHA-256 of the revision before ${signature.previousDigest}`)]
      : []),
    small(`Person ${signer.personId}; SHA-256 of salt and name ${signer.nameHash}`),
    small(verifying(input.recordUrl)),
  ];
}

const verifying = (recordUrl: string | null): string =>
  recordUrl === null
    ? "To verify: take the job's archive to the page “Check” of any installation and compare its SHA-256 with this one. No address that others reach is set up here."
    : `To verify: ${recordUrl}, or take the job's archive to the page “Check” of any installation and compare its SHA-256 with this one.`;

/** How high the signature stands on the page, heading and all. */
export function signatureHeight(flow: Flow, input: InspectionPdfInput): number {
  return lines(input).reduce(
    (sum, line) => sum + layText(flow.faces, [line], BODY_WIDTH, { breaks: true }).height + GAP,
    HEADING_HEIGHT + 4,
  );
}

export function drawSignature(flow: Flow, input: InspectionPdfInput): void {
  drawHeading(flow, "Signature");
  for (const line of lines(input)) flowText(flow, [line], { breaks: true, gap: GAP });
}
