import type { NextConfig } from "next";

const config: NextConfig = {
  // Native and WASM packages are loaded by Node itself, not bundled.
  serverExternalPackages: ["better-sqlite3", "@prisma/adapter-better-sqlite3", "sharp", "heic-decode", "libheif-js"],
  poweredByHeader: false,
  devIndicators: false,
  reactStrictMode: true,
  outputFileTracingRoot: import.meta.dirname,
  turbopack: { root: import.meta.dirname },
};

export default config;
