/** The package has no types of its own. */
declare module "heic-decode" {
  interface Pixels {
    readonly width: number;
    readonly height: number;
    /** RGBA. */
    readonly data: Uint8ClampedArray<ArrayBuffer>;
  }
  /** Size known, not yet decoded. */
  interface Picture {
    readonly width: number;
    readonly height: number;
    readonly decode: () => Promise<Pixels>;
  }
  interface Decoder {
    /** The first picture. */
    (file: { readonly buffer: Uint8Array }): Promise<Pixels>;
    readonly all: (file: { readonly buffer: Uint8Array }) => Promise<readonly Picture[]>;
  }
  const heic: Decoder;
  export default heic;
}
