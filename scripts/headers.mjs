/**
 * What every answer says beside its content. These are the final headers: whoever serves Verso elsewhere sends the
 * same. Nothing is loaded but files of this origin; no script or style stands inside a page; only the one policy of
 * `src/app/worker/trusted.ts` may make the address of a worker.
 */
const contentSecurityPolicy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' blob: data:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
  "require-trusted-types-for 'script'",
  "trusted-types verso-worker",
].join("; ");

export const securityHeaders = {
  "Content-Security-Policy": contentSecurityPolicy,
  "Cross-Origin-Opener-Policy": "same-origin",
  "Cross-Origin-Resource-Policy": "same-origin",
  "Permissions-Policy":
    "accelerometer=(), browsing-topics=(), camera=(), display-capture=(), geolocation=(), gyroscope=(), " +
    "magnetometer=(), microphone=(), midi=(), payment=(), usb=()",
  "Referrer-Policy": "no-referrer",
  "X-Content-Type-Options": "nosniff",
};

const types = {
  css: "text/css; charset=utf-8",
  csv: "text/csv; charset=utf-8",
  html: "text/html; charset=utf-8",
  jpg: "image/jpeg",
  js: "text/javascript; charset=utf-8",
  json: "application/json",
  png: "image/png",
  svg: "image/svg+xml",
  txt: "text/plain; charset=utf-8",
  wasm: "application/wasm",
  webmanifest: "application/manifest+json",
  woff2: "font/woff2",
};

// The library that finds the cards, and the one that reads HEIC, are compiled code that makes functions of text as it
// starts. That is allowed where they run, in a worker of their own, and nowhere else.
const photoWorkerPolicy = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval' 'unsafe-eval'",
  "connect-src 'self'",
].join("; ");

/** The headers of one file, named by its path within the app. */
export function headersFor(path) {
  const type = types[path.slice(path.lastIndexOf(".") + 1)] ?? "application/octet-stream";
  const own = /^assets\/photoWorker-[\w-]+\.js$/.test(path)
    ? { "Content-Security-Policy": photoWorkerPolicy }
    : {};
  return { ...securityHeaders, ...own, "Content-Type": type, "Cache-Control": cachingOf(path) };
}

// What lies in assets/ carries a hash of its content in its name; everything else is asked for anew each time.
function cachingOf(path) {
  return /^assets\/.+-[\w-]{8,}\.\w+$/.test(path) ? "public, max-age=31536000, immutable" : "no-cache";
}
