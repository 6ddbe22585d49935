import "server-only";

export { sheetPdf, type SheetPdfInput } from "./sheet-pdf";
export { benchCardPdf, type BenchCardPdfInput } from "./bench-card-pdf";
export { classPdf, type ClassPdfInput } from "./class-pdf";
export { feedbackPdf, type FeedbackPdfInput } from "./feedback-pdf";
export { inspectionPdf, type InspectionPdfInput } from "./inspection-pdf";
export { STRIP_PLACE, stripPapers, stripPdf, type StripPaper } from "./strip-pdf";
