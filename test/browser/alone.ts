import { mkdtempSync, rmSync } from "node:fs";
import type { Server } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import react from "@vitejs/plugin-react";
import { build } from "vite";
import { serve } from "../../scripts/serve.mjs";
import { test } from "./verso.ts";

export type Alone = { readonly address: string; readonly close: () => void };

/**
 * Tests of one part of the app in a page of its own, the one in the folder `name`, built as the app is and behind the
 * same headers. `instead` gives modules of its own for some of the app's.
 */
export function testAlone(name: string, instead: Readonly<Record<string, string>> = {}) {
  return test.extend<object, { readonly alone: Alone }>({
    alone: [
      // biome-ignore lint/correctness/noEmptyPattern: Playwright reads from the pattern which fixtures are wanted
      async ({}, use) => {
        const alone = await serveAlone(name, instead);
        await use(alone);
        alone.close();
      },
      { scope: "worker" },
    ],
    baseURL: async ({ alone }, use) => use(alone.address),
  });
}

/** Builds that page and serves it. */
export async function serveAlone(
  name: string,
  instead: Readonly<Record<string, string>> = {},
): Promise<Alone> {
  const folder = mkdtempSync(join(tmpdir(), `verso-${name}-`));
  await build({
    configFile: false,
    root: join(import.meta.dirname, name),
    base: "./",
    logLevel: "warn",
    plugins: [react(), putInPlace(join(import.meta.dirname, name), instead)],
    worker: { format: "es" },
    css: { postcss: {} },
    build: { outDir: folder, emptyOutDir: true, assetsInlineLimit: 0, modulePreload: { polyfill: false } },
  });
  const { server, address } = await serve({ folder, port: 0 });
  return { address, close: () => closeAll(server, folder) };
}

function putInPlace(root: string, instead: Readonly<Record<string, string>>) {
  return {
    name: "put-in-place",
    enforce: "pre",
    resolveId(source: string) {
      const found = Object.entries(instead).find(([end]) => source.endsWith(end));
      return found === undefined ? null : join(root, found[1]);
    },
  } as const;
}

function closeAll(server: Server, folder: string): void {
  server.close();
  server.closeAllConnections();
  rmSync(folder, { recursive: true });
}
