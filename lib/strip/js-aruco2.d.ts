/** The part of js-aruco2 2.0.0 that is used here; the package ships no types. */
declare module "js-aruco2" {
  interface FoundMarker {
    readonly id: number;
    /** From the marker's own top left, clockwise, whole pixels. */
    readonly corners: readonly { readonly x: number; readonly y: number }[];
    readonly hammingDistance: number;
  }
  const aruco: {
    readonly AR: {
      readonly Dictionary: new (name: string) => { readonly codeList: readonly string[] };
      readonly Detector: new (config: {
        readonly dictionaryName: string;
        readonly maxHammingDistance?: number;
      }) => {
        detectImage(width: number, height: number, data: Uint8ClampedArray): readonly FoundMarker[];
      };
    };
  };
  export default aruco;
}
