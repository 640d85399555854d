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
    startPageAtOnce(),
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
      // Nothing in these does anything by being imported; what a page alone uses comes with that page.
      treeshake: { moduleSideEffects: (id) => !pure.test(id) },
      output: {
        // The browser finds a later service worker only under the same address.
        entryFileNames: ({ name }) => (name === "sw" ? "sw.js" : "assets/[name]-[hash].js"),
      },
    },
  },
});

const startPage = "src/app/screens/projects/projects.tsx";

/** Names the parts of the start page in the page itself: they come together with the script that would ask for them. */
function startPageAtOnce(): Plugin {
  return {
    name: "verso-start-page-at-once",
    apply: "build",
    transformIndexHtml: {
      order: "post",
      handler(html, { bundle = {} }) {
        const files = filesOf(startPage, bundle).filter((file) => !html.includes(file));
        return files.map((file) => ({
          tag: "link",
          attrs: file.endsWith(".css")
            ? { rel: "preload", as: "style", crossorigin: true, href: `./${file}` }
            : { rel: "modulepreload", crossorigin: true, href: `./${file}` },
          injectTo: "head",
        }));
      },
    },
  };
}

/** The scripts that a module needs before it can run, and its styles. */
function filesOf(module: string, bundle: Rolldown.OutputBundle): readonly string[] {
  const found = new Set<string>();
  const take = (fileName: string) => {
    const chunk = bundle[fileName];
    if (chunk?.type !== "chunk" || found.has(fileName)) return;
    found.add(fileName);
    for (const style of chunk.viteMetadata?.importedCss ?? []) found.add(style);
    for (const other of chunk.imports) take(other);
  };
  for (const chunk of Object.values(bundle))
    if (chunk.type === "chunk" && chunk.facadeModuleId?.replaceAll("\\", "/").endsWith(module))
      take(chunk.fileName);
  if (found.size === 0) throw new Error(`${module} is not among what was built`);
  return [...found];
}

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

// What is larger is wanted by one page alone: it is fetched once there is nothing else to do.
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
  const isLater = (name: string) => contentOf(bundle[name], name).length > largestInShell;
  return {
    build: build.digest("hex").slice(0, 16),
    files: names.filter((name) => !isLater(name)),
    later: names.filter(isLater),
  };
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
