import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { request, type Server } from "node:http";
import { connect } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { serve, serveOnFreePort } from "../../scripts/serve.mjs";

const folder = mkdtempSync(join(tmpdir(), "verso-serve-"));
const app = join(folder, "dist");
let server: Server;
let port: number;

beforeAll(async () => {
  mkdirSync(join(app, "assets"), { recursive: true });
  mkdirSync(join(app, ".vite"));
  writeFileSync(join(folder, "secret.txt"), "not for you");
  for (const [name, text] of Object.entries(files)) writeFileSync(join(app, name), text);
  symlinkSync(join(folder, "secret.txt"), join(app, "link.txt"));
  const served = await serve({ folder: app, port: 0 });
  server = served.server;
  port = portOf(server);
});

afterAll(() => {
  server.close();
  rmSync(folder, { recursive: true });
});

const files = {
  "index.html": "<!doctype html>",
  "sw.js": "self;",
  "icon.svg": "<svg/>",
  "icon-192.png": "png",
  "manifest.webmanifest": "{}",
  "assets/index-C3eX2fVn.js": "export {};",
  "assets/index-suiuNPNA.css": "a{}",
  "assets/sans-CWNzRldh.woff2": "font",
  "assets/plain.js": "export {};",
  ".vite/manifest.json": "{}",
};

type Answer = {
  readonly status: number;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string;
};

/** Asks for exactly this path: no client in between that would tidy it up. */
function ask(path: string, headers: Record<string, string> = {}, method = "GET"): Promise<Answer> {
  return new Promise((done, failed) => {
    const asked = request({ host: "127.0.0.1", port, path, method, headers }, (response) => {
      let body = "";
      response.on("data", (part) => {
        body += part;
      });
      response.on("end", () => {
        const given = Object.entries(response.headers).map(([name, value]) => [name, String(value)]);
        done({ status: response.statusCode ?? 0, headers: Object.fromEntries(given), body });
      });
    });
    asked.on("error", failed);
    asked.end();
  });
}

function portOf(of: Server): number {
  const place = of.address();
  return typeof place === "object" && place !== null ? place.port : 0;
}

describe("what is served", () => {
  it.each([
    ["/", "text/html; charset=utf-8", "no-cache"],
    ["/index.html", "text/html; charset=utf-8", "no-cache"],
    ["/index.html?words=en-GB", "text/html; charset=utf-8", "no-cache"],
    ["/sw.js", "text/javascript; charset=utf-8", "no-cache"],
    ["/icon.svg", "image/svg+xml", "no-cache"],
    ["/icon-192.png", "image/png", "no-cache"],
    ["/manifest.webmanifest", "application/manifest+json", "no-cache"],
    ["/assets/index-C3eX2fVn.js", "text/javascript; charset=utf-8", "public, max-age=31536000, immutable"],
    ["/assets/index-suiuNPNA.css", "text/css; charset=utf-8", "public, max-age=31536000, immutable"],
    ["/assets/sans-CWNzRldh.woff2", "font/woff2", "public, max-age=31536000, immutable"],
    // A name without a hash may change its content.
    ["/assets/plain.js", "text/javascript; charset=utf-8", "no-cache"],
  ])("%s", async (path, type, caching) => {
    const { status, headers } = await ask(path);
    expect(status).toBe(200);
    expect(headers["content-type"]).toBe(type);
    expect(headers["cache-control"]).toBe(caching);
  });

  it("is not sent again to one who has it", async () => {
    const first = await ask("/index.html");
    const again = await ask("/index.html", { "If-None-Match": first.headers.etag ?? "" });
    expect(again).toMatchObject({ status: 304, body: "" });
  });

  it("is there as soon as it was built", async () => {
    writeFileSync(join(app, "assets", "later-AbCdEfGh.js"), "export {};");
    expect(await ask("/assets/later-AbCdEfGh.js")).toMatchObject({ status: 200 });
  });

  it("answers a question about the headers alone", async () => {
    const { status, headers, body } = await ask("/index.html", {}, "HEAD");
    expect({ status, body, length: headers["content-length"] }).toEqual({
      status: 200,
      body: "",
      length: "15",
    });
  });
});

describe("what is not served", () => {
  it.each([
    ["what isn't there", "/nothing.html"],
    ["a folder", "/assets"],
    ["a folder, as one", "/assets/"],
    ["what begins with a point", "/.vite/manifest.json"],
    ["a file beside the app", "/../secret.txt"],
    ["the same, written as bytes", "/%2e%2e/secret.txt"],
    ["the same, with its slash as a byte", "/..%2fsecret.txt"],
    ["the same, further in", "/assets/../../secret.txt"],
    ["the same, twice encoded", "/%252e%252e/secret.txt"],
    ["the same, the other way round", "/..\\secret.txt"],
    ["a whole path", "//etc/passwd"],
    ["a link that leads out", "/link.txt"],
    ["bytes that are no text", "/%ff"],
    ["a name with a nought in it", "/index.html%00.js"],
  ])("%s", async (_, path) => {
    const { status, body, headers } = await ask(path);
    expect(status).toBe(404);
    expect(body).not.toContain("not for you");
    expect(headers["content-security-policy"]).toContain("default-src 'none'");
  });

  it.each(["POST", "PUT", "DELETE", "OPTIONS"])("%s", async (method) => {
    expect(await ask("/index.html", {}, method)).toMatchObject({ status: 405 });
  });

  it("a name of elsewhere that points to this machine", async () => {
    expect(await ask("/", { Host: "elsewhere.example" })).toMatchObject({ status: 421 });
  });

  it("a second address, under which there would be other projects", async () => {
    const { status, headers } = await ask("/?words=en-GB", { Host: `localhost:${port}` });
    expect({ status, to: headers.location }).toEqual({
      status: 302,
      to: `http://127.0.0.1:${port}/?words=en-GB`,
    });
  });

  it("other machines: it listens on loopback alone", () => {
    expect(server.address()).toMatchObject({ address: "127.0.0.1" });
  });
});

describe("the headers", () => {
  it.each(["/", "/sw.js", "/assets/index-C3eX2fVn.js", "/nothing"])("are complete for %s", async (path) => {
    const { headers } = await ask(path);
    const policy = Object.fromEntries(
      (headers["content-security-policy"] ?? "").split("; ").map((rule) => {
        const [name, ...sources] = rule.split(" ");
        return [name, sources.join(" ")];
      }),
    );
    expect(policy).toEqual({
      "default-src": "'none'",
      "script-src": "'self'",
      "style-src": "'self'",
      "img-src": "'self' blob: data:",
      "font-src": "'self'",
      "connect-src": "'self'",
      "worker-src": "'self'",
      "manifest-src": "'self'",
      "base-uri": "'none'",
      "form-action": "'none'",
      "frame-ancestors": "'none'",
      "require-trusted-types-for": "'script'",
      "trusted-types": "verso-worker",
    });
    expect(headers).toMatchObject({
      "cross-origin-opener-policy": "same-origin",
      "cross-origin-resource-policy": "same-origin",
      "referrer-policy": "no-referrer",
      "x-content-type-options": "nosniff",
    });
    expect(headers["permissions-policy"]).toContain("geolocation=()");
  });
});

describe("the port", () => {
  it("is the next free one where the wanted one is taken", async () => {
    const { server: other } = await serveOnFreePort({ folder: app, port });
    expect(portOf(other)).toBeGreaterThan(port);
    other.close();
  });

  it("is refused by the plain way where it is taken", async () => {
    await expect(serve({ folder: app, port })).rejects.toMatchObject({ code: "EADDRINUSE" });
  });

  it("survives one who breaks off in the middle", async () => {
    await new Promise<void>((done) => {
      const socket = connect(port, "127.0.0.1", () => {
        socket.write("GET /index.html HTT");
        socket.destroy();
        done();
      });
    });
    expect(await ask("/")).toMatchObject({ status: 200 });
  });
});
