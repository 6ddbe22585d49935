import { bucketStore } from "./bucket-store";
import { folderStore } from "./folder-store";
import type { PhotoStore } from "./store-types";

/** The store at a place: "s3://BUCKET/PREFIX" is one behind an S3 interface, anything else a data folder. */
export const photoStore = (place: string): PhotoStore =>
  place.startsWith("s3://") ? bucketStore(place) : folderStore(place);
