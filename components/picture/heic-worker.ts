import { heicPreview } from "./heic-preview";

/** Away from the screen's own thread; the decoder comes with the first file that needs it. */
self.onmessage = ({ data }: MessageEvent<Uint8Array>) => {
  heicPreview(data).then(
    (preview) => self.postMessage(preview),
    () => self.postMessage(null),
  );
};
