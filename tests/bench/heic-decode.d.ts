/** The package has no types of its own. */
declare module "heic-decode" {
  interface Picture {
    readonly width: number;
    readonly height: number;
    /** RGBA. */
    readonly data: Uint8ClampedArray;
  }
  export default function decode(from: { readonly buffer: Uint8Array }): Promise<Picture>;
}
