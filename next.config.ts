import type { NextConfig } from "next";

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
  devIndicators: false,
  reactStrictMode: true,
  outputFileTracingRoot: import.meta.dirname,
  turbopack: { root: import.meta.dirname },
};

export default config;
