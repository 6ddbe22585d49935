import "server-only";

export { sheetPdf, type SheetPdfInput } from "./sheet-pdf";
