import { invariant } from "@/lib/base";

/** How a paper is signed: what the signature says of itself, and whoever makes it. */
interface PaperSeal {
  /** Whom the certificate is issued to. */
  readonly name: string;
  readonly reason: string;
  /** ISO 8601: when this file is made, by the clock of this machine. */
  readonly at: string;
  /** A detached CMS signature over these bytes, DER. */
  readonly sign: (covered: Uint8Array) => Uint8Array;
}

/** Bytes kept free for the signature: a chain of certificates with long keys takes a quarter of it. */
const ROOM = 24_576;
const GAP = "0000000000";

/**
 * A paper of this house with a digital signature over all of it (ISO 32000-1, 12.8; the profile is ETSI EN 319 142-1,
 * baseline B-B). The paper itself stays as it is, byte for byte: the signature is appended as an update of the file, so a
 * signed paper shows what the unsigned one shows.
 */
export function signPaper(paper: Uint8Array, seal: PaperSeal): Uint8Array {
  const before = Buffer.from(paper);
  const unsigned = Buffer.concat([before, updateOf(before, seal)]);
  const open = unsigned.indexOf("/Contents <", before.length) + "/Contents ".length;
  const close = unsigned.indexOf(">", open) + 1;
  const range = [0, open, close, unsigned.length - close].map((n) => String(n).padStart(GAP.length, "0"));
  unsigned.write(range.join(" "), unsigned.indexOf("/ByteRange [", before.length) + "/ByteRange [".length);
  const covered = Buffer.concat([unsigned.subarray(0, open), unsigned.subarray(close)]);
  const signature = Buffer.from(seal.sign(covered)).toString("hex");
  invariant(signature.length <= ROOM * 2, "the signature is longer than the room kept for it");
  unsigned.write(signature, open + 1);
  return new Uint8Array(unsigned);
}

/** The objects that carry a signature yet to be made, with their cross-reference table: what is appended. */
function updateOf(before: Buffer, seal: PaperSeal): Buffer {
  const file = readFile(before);
  const [signatureId, fieldId] = [file.size, file.size + 1];
  const catalog = file.objectOf(file.rootId);
  const pageId = idIn(file.objectOf(idIn(catalog, "Pages")), "Kids");
  const page = file.objectOf(pageId);
  invariant(!/\/(AcroForm|Annots)\b/.test(catalog + page), "the paper has fields or links already");
  const objects = new Map<number, string>([
    [file.rootId, withEntry(catalog, `/AcroForm << /Fields [${fieldId} 0 R] /SigFlags 3 >>`)],
    [pageId, withEntry(page, `/Annots [${fieldId} 0 R]`)],
    [signatureId, signatureWords(seal)],
    [fieldId, fieldWords(signatureId, pageId)],
  ]);
  let text = "\n";
  const offsets = new Map<number, number>();
  for (const [id, words] of objects) {
    offsets.set(id, before.length + text.length);
    text += `${id} 0 obj\n${words}\nendobj\n`;
  }
  const startsAt = before.length + text.length;
  const rows = [...offsets].toSorted(([a], [b]) => a - b);
  const table = rows.map(([id, at]) => `${id} 1\n${String(at).padStart(10, "0")} 00000 n \n`).join("");
  const trailer = `<< /Size ${file.size + 2} /Root ${file.rootId} 0 R /Info ${file.infoId} 0 R /ID ${file.fileId} /Prev ${file.startsAt} >>`;
  return Buffer.from(`${text}xref\n${table}trailer\n${trailer}\nstartxref\n${startsAt}\n%%EOF\n`, "latin1");
}

/** Where everything stands in a file that pdfkit wrote: one plain table of offsets, dictionaries as text. */
function readFile(bytes: Buffer) {
  const startsAt = Number(/startxref\s+(\d+)\s+%%EOF\s*$/.exec(bytes.subarray(-64).toString("latin1"))?.[1]);
  const tail = bytes.subarray(startsAt).toString("latin1");
  const offsets = [...tail.matchAll(/^(\d{10}) \d{5} [fn]/gm)].map(([, at]) => Number(at));
  return {
    startsAt,
    size: offsets.length,
    rootId: idIn(tail, "Root"),
    infoId: idIn(tail, "Info"),
    fileId: /\/ID (\[[^\]]*\])/.exec(tail)?.[1] ?? "[<00> <00>]",
    objectOf(id: number): string {
      const from = offsets[id] ?? 0;
      const words = bytes.subarray(from, bytes.indexOf("endobj", from)).toString("latin1");
      invariant(words.startsWith(`${id} 0 obj`), `object ${id} is not where the table says`);
      return words.slice(words.indexOf("<<")).trimEnd();
    },
  };
}

/** The number of the first object that an entry points to. */
function idIn(words: string, entry: string): number {
  const found = new RegExp(`/${entry} \\[?(\\d+) 0 R`).exec(words)?.[1];
  invariant(found !== undefined, `the paper has no ${entry}`);
  return Number(found);
}

const withEntry = (dictionary: string, entry: string): string => `${dictionary.slice(0, -2)}${entry}\n>>`;

function signatureWords({ name, reason, at }: PaperSeal): string {
  const day = `D:${at.slice(0, 19).replaceAll(/\D/g, "")}Z`;
  return [
    "<< /Type /Sig /Filter /Adobe.PPKLite /SubFilter /ETSI.CAdES.detached",
    `/ByteRange [${[GAP, GAP, GAP, GAP].join(" ")}]`,
    `/Contents <${"0".repeat(ROOM * 2)}>`,
    `/M (${day}) /Name ${textString(name)} /Reason ${textString(reason)} >>`,
  ].join("\n");
}

/** A field of no size: the signature is in the file, and nothing of it on the paper. Printed and locked are its flags. */
const fieldWords = (signatureId: number, pageId: number): string =>
  `<< /Type /Annot /Subtype /Widget /FT /Sig /T (Issued) /V ${signatureId} 0 R /P ${pageId} 0 R /Rect [0 0 0 0] /F 132 >>`;

/** UTF-16, written as hexadecimal digits (ISO 32000-1, 7.9.2.2). */
function textString(text: string): string {
  const swapped = Buffer.from(`\uFEFF${text}`, "utf16le").swap16();
  return `<${swapped.toString("hex")}>`;
}
