/** What the device's own share sheet needs of the browser; a part of `navigator`, so that it can be stood in for. */
export interface Sharer {
  readonly canShare?: (data: { files: File[] }) => boolean;
  readonly share?: (data: { files: File[]; title: string }) => Promise<void>;
}

/**
 * Hands a file to the device's share sheet where there is one, else keeps it as a download. A person who closes the sheet
 * wanted neither.
 */
export async function shareFile(
  file: File,
  title: string,
  sharer: Sharer = navigator,
  keep: (file: File) => void = download,
): Promise<"shared" | "kept" | "closed"> {
  if (sharer.share && sharer.canShare?.({ files: [file] })) {
    try {
      await sharer.share({ files: [file], title });
      return "shared";
    } catch (error) {
      // Refused for another reason (the press was too long ago, say): the file is still worth having.
      if (error instanceof DOMException && error.name === "AbortError") return "closed";
    }
  }
  keep(file);
  return "kept";
}

function download(file: File): void {
  const url = URL.createObjectURL(file);
  const link = document.createElement("a");
  link.href = url;
  link.download = file.name;
  link.click();
  // Some browsers fetch it after the click has ended.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
