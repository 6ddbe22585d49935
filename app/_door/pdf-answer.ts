/** A PDF to be shown in place, for whoever asked and nobody else. */
export function pdfAnswer(bytes: Uint8Array, name: string): Response {
  return new Response(Buffer.from(bytes), {
    headers: {
      "content-type": "application/pdf",
      "content-disposition": `inline; filename="${name}"`,
      "cache-control": "private, no-store",
      "x-content-type-options": "nosniff",
    },
  });
}
