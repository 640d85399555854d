import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import optimizeLocales from "@react-aria/optimize-locales-plugin";
import react from "@vitejs/plugin-react";
import { defineConfig, type Plugin } from "vite";

const publicDir = "src/app/public";

export default defineConfig({
  root: import.meta.dirname,
  // Addresses within the app are relative, so that it can be served from any folder of any place.
  base: "./",
  publicDir,
  // Nothing outside this folder has a say in how the app is built.
  envDir: false,
  css: { postcss: {} },
  plugins: [
    react(),
    { ...optimizeLocales.vite({ locales: ["en-US", "en-GB", "en-AU"] }), enforce: "pre" },
    keptForOffline(),
  ],
  worker: { format: "es" },
  build: {
    target: ["chrome111", "firefox115", "safari16.4"],
    // Nothing is put inside the page or a style: the headers forbid fonts and scripts that aren't files.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    manifest: true,
    rolldownOptions: {
      input: { index: "index.html", sw: "src/app/serviceWorker/sw.ts" },
      output: {
        // The browser finds a later service worker only under the same address.
        entryFileNames: ({ name }) => (name === "sw" ? "sw.js" : "assets/[name]-[hash].js"),
      },
    },
  },
});

/** Tells the service worker which files are the app, and gives this build a name made of what is in them. */
function keptForOffline(): Plugin {
  return {
    name: "verso-kept-for-offline",
    apply: "build",
    enforce: "post",
    generateBundle(_, bundle) {
      const worker = bundle["sw.js"];
      if (worker?.type !== "chunk") throw new Error("the service worker was not built");
      const files = [...Object.values(bundle).map(({ fileName }) => fileName), ...publicFiles()]
        .filter((name) => name !== "sw.js" && !name.startsWith(".vite/"))
        .sort();
      const build = createHash("sha256");
      for (const name of files) build.update(name).update(contentOf(bundle[name], name));
      const shell = { build: build.digest("hex").slice(0, 16), files };
      worker.code = worker.code.replaceAll("__SHELL__", JSON.stringify(shell));
    },
  };
}

type Output = Parameters<Extract<Plugin["generateBundle"], (...given: never) => unknown>>[1][string];

function contentOf(output: Output | undefined, name: string): string | Uint8Array {
  if (output === undefined) return readFileSync(join(publicDir, name));
  return output.type === "chunk" ? output.code : output.source;
}

function publicFiles(): string[] {
  return readdirSync(publicDir, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) =>
      join(entry.parentPath, entry.name)
        .slice(publicDir.length + 1)
        .replaceAll("\\", "/"),
    );
}
