import "server-only";

export { sheetPdf } from "./sheet-pdf";
export { benchCardPdf } from "./bench-card-pdf";
export { cardPdf } from "./card-pdf";
export { classPdf } from "./class-pdf";
export { feedbackPdf } from "./feedback-pdf";
export { runSheetPdf } from "./run-sheet-pdf";
export { inspectionPdf } from "./inspection-pdf";
export { signPaper } from "./sign-paper";
export { stripPapers, stripPdf, type StripPaper } from "./strip-pdf";
