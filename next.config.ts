import type { NextConfig } from "next";
import createNextIntlPlugin from "next-intl/plugin";

const config: NextConfig = {
  poweredByHeader: false,
  reactStrictMode: true,
  // Types are checked once, by `npm test`: whoever starts a host need not wait for that, nor stumble over a test's type.
  typescript: { ignoreBuildErrors: true },
  // Native code and WebAssembly that must be loaded from node_modules, not bundled.
  serverExternalPackages: [
    "@node-rs/argon2",
    "@techstark/opencv-js",
    "@electric-sql/pglite",
    "@electric-sql/pglite-pgvector",
    "@electric-sql/pglite-socket",
    "@prisma/schema-engine-wasm",
    "onnxruntime-node",
    "pdfkit",
    "piscina",
    "sharp",
  ],
};

export default createNextIntlPlugin("./app/_web/request-messages.ts")(config);
