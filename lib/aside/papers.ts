import {
  benchCardPdf,
  cardPdf,
  classPdf,
  feedbackPdf,
  inspectionPdf,
  runSheetPdf,
  sheetPdf,
  stripPdf,
  type StripPaper,
} from "@/lib/pdf";
import type { Work } from "./words";

async function* onePiece(bytes: Uint8Array): AsyncGenerator<Uint8Array, void, void> {
  yield bytes;
}

/** A paper is drawn whole and is its only piece. */
const paper =
  <I>(draw: (input: I) => Promise<Uint8Array>): Work<I, null> =>
  async (input) => ({ head: null, parts: onePiece(await draw(input)) });

/** Every paper there is, by name. */
export const papers = {
  sheet: paper(sheetPdf),
  benchCard: paper(benchCardPdf),
  card: paper(cardPdf),
  class: paper(classPdf),
  feedback: paper(feedbackPdf),
  runSheet: paper(runSheetPdf),
  inspection: paper(inspectionPdf),
  strip: paper((asked: { readonly paper: StripPaper; readonly createdAt: string }) =>
    stripPdf(asked.paper, asked.createdAt),
  ),
};
