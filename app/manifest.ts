import type { MetadataRoute } from "next";

/** How a device installs Toeline. */
export default function manifest(): MetadataRoute.Manifest {
  return {
    id: "/",
    name: "Toeline",
    short_name: "Toeline",
    description:
      "Read the chipped bead: sizes, likely causes, the one change to try, and the clause it meets.",
    start_url: "/",
    scope: "/",
    display: "standalone",
    background_color: "#ffffff",
    theme_color: "#14171c",
    icons: [
      { src: "/icons/192.png", sizes: "192x192", type: "image/png" },
      { src: "/icons/512.png", sizes: "512x512", type: "image/png" },
      { src: "/icons/masked-512.png", sizes: "512x512", type: "image/png", purpose: "maskable" },
    ],
    shortcuts: [{ name: "New bead", url: "/beads/new" }],
  };
}
