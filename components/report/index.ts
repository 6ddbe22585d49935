export { AnswerCard } from "./answer-card";
export { BenchCard } from "./bench-card";
export { OutcomeForm } from "./outcome-form";
export { PdfLink } from "./pdf-link";
export { PrintButton } from "./print-button";
export { Sheet } from "./sheet";
export { SideBySide } from "./side-by-side";
export { SharePdf } from "./share-pdf";
