// Serves the built app to this machine alone. On its own: node scripts/serve.mjs [--port 4173] [--folder dist]
import { createHash } from "node:crypto";
import { existsSync, readdirSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import { join, resolve } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { parseArgs } from "node:util";
import { headersFor, securityHeaders } from "./headers.mjs";

const loopback = "127.0.0.1";
export const usualPort = 4173;

/** Serves `folder` and resolves with the server and its address; rejects where the port is taken. */
export function serve({ folder, port }) {
  const files = { folder, names: namesIn(folder) };
  const server = createServer((request, response) => {
    answer(request, files).then(({ status, headers, body }) => {
      response.writeHead(status, { ...headers, "Content-Length": body.length });
      response.end(request.method === "HEAD" ? undefined : body);
    });
  });
  return new Promise((done, refused) => {
    server.once("error", refused);
    server.listen(port, loopback, () =>
      done({ server, address: `http://${loopback}:${server.address().port}/` }),
    );
  });
}

/** The same on the next port that is free, where this one is taken. */
export async function serveOnFreePort({ folder, port }) {
  for (let tried = port; tried < port + 50; tried += 1) {
    try {
      return await serve({ folder, port: tried });
    } catch (error) {
      if (error.code !== "EADDRINUSE") throw error;
    }
  }
  return serve({ folder, port: 0 });
}

// Only what lies in the folder has a name here, so no way of writing `..` leads out of it.
function namesIn(folder) {
  return new Set(
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) =>
        join(entry.parentPath, entry.name).slice(join(folder, "/").length).replaceAll("\\", "/"),
      )
      .filter((name) => !name.startsWith(".")),
  );
}

async function answer(request, files) {
  const { host } = request.headers;
  if (!isForUs(host)) return plain(421, "This address is not served here.");
  // Projects belong to the address that they were made under: there is only one.
  if (host.startsWith("localhost"))
    return plain(302, "", { Location: `http://${host.replace("localhost", loopback)}${request.url}` });
  if (request.method !== "GET" && request.method !== "HEAD")
    return plain(405, "Files can only be read here.", { Allow: "GET, HEAD" });
  const path = pathOf(request.url);
  if (path === null || !isThere(path, files)) return plain(404, "There is no such file.");
  return fileAnswer(path, files.folder, request.headers["if-none-match"]);
}

// The app may have been built anew meanwhile.
function isThere(path, files) {
  if (!files.names.has(path)) files.names = namesIn(files.folder);
  return files.names.has(path);
}

async function fileAnswer(path, folder, known) {
  let body;
  try {
    body = await readFile(join(folder, path));
  } catch {
    return plain(404, "This file is gone.");
  }
  const tag = `"${createHash("sha256").update(body).digest("base64url").slice(0, 22)}"`;
  const headers = { ...headersFor(path), ETag: tag };
  return known === tag ? { status: 304, headers, body: Buffer.alloc(0) } : { status: 200, headers, body };
}

// A page elsewhere may point its own name at this machine; it isn't answered.
function isForUs(host) {
  return /^(localhost|127\.0\.0\.1)(:\d+)?$/.test(host ?? "");
}

function pathOf(address) {
  try {
    const path = decodeURIComponent(address.split(/[?#]/, 1)[0]).slice(1);
    return path === "" ? "index.html" : path;
  } catch {
    return null;
  }
}

function plain(status, text, more = {}) {
  const headers = {
    ...securityHeaders,
    "Content-Type": "text/plain; charset=utf-8",
    "Cache-Control": "no-store",
  };
  return { status, headers: { ...headers, ...more }, body: Buffer.from(`${text}\n`) };
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const { values } = parseArgs({ options: { port: { type: "string" }, folder: { type: "string" } } });
  const folder = resolve(values.folder ?? fileURLToPath(new URL("../dist", import.meta.url)));
  if (existsSync(join(folder, "index.html"))) {
    const { address } = await serve({ folder, port: Number(values.port ?? usualPort) });
    process.stdout.write(`Verso is at ${address}\n`);
  } else {
    process.stderr.write(`The app is not built in ${folder}. Build it first: npx vite build\n`);
    process.exitCode = 1;
  }
}
