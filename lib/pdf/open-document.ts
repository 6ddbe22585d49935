import PDFDocument from "pdfkit";
import { PAGE } from "./page";

interface Paper {
  readonly title: string;
  /** ISO 8601, written as the file's creation date: the clock is the caller's. */
  readonly createdAt: string;
  /** Points; left out: A4. */
  readonly size?: readonly [width: number, height: number];
  /** Whether it carries a structure tree for screen readers; whoever opens it fills it. */
  readonly tagged?: boolean;
}

/** An empty PDF 1.7 of this house without a page; the same input gives the same bytes. */
export function openDocument({
  title,
  createdAt,
  size = [PAGE.width, PAGE.height],
  tagged = true,
}: Paper): PDFKit.PDFDocument {
  return new PDFDocument({
    size: [...size],
    margin: 0,
    autoFirstPage: false,
    bufferPages: true,
    tagged,
    pdfVersion: "1.7",
    lang: "en",
    displayTitle: true,
    // No font until ours are registered: pdfkit would read Helvetica's measures from its own folder.
    font: null as unknown as string,
    info: { Title: title, Producer: "Toeline", Creator: "Toeline", CreationDate: new Date(createdAt) },
  });
}
