import type { NextConfig } from "next";

const everywhere = [
  { key: "X-Content-Type-Options", value: "nosniff" },
  // The address of a hand-in is its key: it goes to no other site. Our own pages name their origin when they write.
  { key: "Referrer-Policy", value: "same-origin" },
  { key: "X-Frame-Options", value: "DENY" },
  { key: "Cross-Origin-Opener-Policy", value: "same-origin" },
  { key: "Permissions-Policy", value: "camera=(self), microphone=(self), geolocation=()" },
  { key: "Content-Security-Policy", value: "frame-ancestors 'none'" },
];

const config: NextConfig = {
  // Native and WASM packages are loaded by Node itself, not bundled.
  serverExternalPackages: [
    "better-sqlite3",
    "@prisma/adapter-better-sqlite3",
    "sharp",
    "heic-decode",
    "libheif-js",
  ],
  // `npm test` checks the types of the whole tree, tests included; `npm start` should not do it again on each build.
  typescript: { ignoreBuildErrors: true },
  poweredByHeader: false,
  // Photos are served by our own routes, which ask whose they are. The framework's door would keep copies of them for
  // whoever asks next, by address alone.
  images: { unoptimized: true },
  // On every answer; pages get their own policy besides (proxy.ts). What stands here outranks what a route says: the pictures of
  // photos, which browsers may keep because their address is their content's, say it themselves.
  headers: async () => [
    { source: "/:path*", headers: everywhere },
    { source: "/api/:path((?!photos/).*)", headers: [{ key: "Cache-Control", value: "private, no-store" }] },
  ],
  devIndicators: false,
  reactStrictMode: true,
  outputFileTracingRoot: import.meta.dirname,
  turbopack: { root: import.meta.dirname },
  experimental: {
    // Nobody reads them: a server started without --enable-source-maps does not, and browsers get none.
    turbopackSourceMaps: false,
    // A build is made once for what it is made from (lib/cli/prepare.mjs); keeping its parts costs more than it brings.
    turbopackFileSystemCacheForBuild: false,
  },
};

export default config;
