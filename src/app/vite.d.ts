/// <reference types="vite/client" />

// Its own types are of another version; `src/app/worker/photo/libraries.ts` says what is used of it.
declare module "libheif-js/libheif-wasm/libheif-bundle.mjs";
declare module "pdfkit/standard-fonts/Helvetica";
