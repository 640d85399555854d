import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import optimizeLocales from "@react-aria/optimize-locales-plugin";
import react from "@vitejs/plugin-react";
import { defineConfig, type Plugin, type Rolldown } from "vite";

const publicDir = join(import.meta.dirname, "src/app/public");

const pure =
  /[\\/]src[\\/](engine|files|store|words|german)[\\/]|[\\/]node_modules[\\/](culori|papaparse)[\\/]/;

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
    { ...optimizeLocales.vite({ locales: ["en-US", "en-GB", "en-AU", "de-DE"] }), enforce: "pre" },
    keptForOffline(),
  ],
  worker: { format: "es" },
  build: {
    target: ["chrome111", "firefox115", "safari16.4"],
    // Nothing is put inside the page or a style: the headers forbid fonts and scripts that aren't files.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    manifest: true,
    // What may be how large is held by scripts/check-first-load.mjs.
    chunkSizeWarningLimit: 2048,
    rolldownOptions: {
      input: { index: "index.html", sw: "src/app/serviceWorker/sw.ts" },
      // The start page is listed with the others, and comes with the first script all the same.
      checks: { ineffectiveDynamicImport: false },
      // Nothing in these does anything by being imported; what a page alone uses comes with that page.
      treeshake: { moduleSideEffects: (id) => !pure.test(id) },
      output: {
        // One file rather than twenty: on a slow network each is asked for, and waited for, by itself.
        codeSplitting: { groups: [{ name: "first", tags: ["$initial"], test: /^(?!.*serviceWorker)/ }] },
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
    generateBundle: {
      // After everything else, the page itself included.
      order: "post",
      handler(_, bundle) {
        const worker = bundle["sw.js"];
        if (worker?.type !== "chunk") throw new Error("the service worker was not built");
        worker.code = worker.code.replaceAll("__SHELL__", JSON.stringify(shellOf(bundle)));
      },
    },
  };
}

// What is larger is wanted by one page alone, unless the app begins with it: it is fetched once there is nothing else to do.
const largestInShell = 512 * 1024;

function shellOf(bundle: Rolldown.OutputBundle): {
  readonly build: string;
  readonly files: readonly string[];
  readonly later: readonly string[];
} {
  const names = [...Object.values(bundle).map(({ fileName }) => fileName), ...publicFiles()]
    .filter((name) => name !== "sw.js" && !name.startsWith(".vite/"))
    .sort();
  if (!names.includes("index.html")) throw new Error("the page is not among the files that are kept");
  const build = createHash("sha256");
  for (const name of names) build.update(name).update(contentOf(bundle[name], name));
  const isLater = (name: string) =>
    !isEntry(bundle[name]) && contentOf(bundle[name], name).length > largestInShell;
  return {
    build: build.digest("hex").slice(0, 16),
    files: names.filter((name) => !isLater(name)),
    later: names.filter(isLater),
  };
}

function isEntry(output: Rolldown.OutputBundle[string] | undefined): boolean {
  return output?.type === "chunk" && output.isEntry;
}

function contentOf(output: Rolldown.OutputBundle[string] | undefined, name: string): string | Uint8Array {
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
