import { later } from "@/components/ui";

/** What opens over the photo, with the pictures and words of every imperfection: nobody opens it before the photo is there. */
export const overPhoto = later(() => import("./over-photo"));
