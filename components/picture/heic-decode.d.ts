/** Of the decoder, which brings no types. */
declare module "heic-decode" {
  interface Picture {
    readonly width: number;
    readonly height: number;
    /** RGBA. */
    readonly decode: () => Promise<{ readonly data: Uint8ClampedArray<ArrayBuffer> }>;
  }
  const heic: { readonly all: (file: { readonly buffer: Uint8Array }) => Promise<readonly Picture[]> };
  export default heic;
}
