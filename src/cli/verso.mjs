#!/usr/bin/env node
// Starts the command line from its TypeScript sources. Plain JavaScript, so that any Node can read this far.
const [major, minor] = process.versions.node.split(".").map(Number);

if (major > 20 || (major === 20 && minor >= 19)) start();
else {
  process.stderr.write(
    `Verso needs Node 20.19 or newer; this is Node ${process.versions.node}. Install a newer Node, then try again.\n`,
  );
  process.exitCode = 2;
}

async function start() {
  let tsx;
  try {
    tsx = await import("tsx/esm/api");
  } catch {
    process.stderr.write("Verso is not installed yet. Run `npm ci` in its folder, then try again.\n");
    process.exitCode = 2;
    return;
  }
  // `false`: a tsconfig.json in the folder the user stands in has no say here.
  tsx.register({ tsconfig: false });
  try {
    await import("./main.ts");
  } catch (error) {
    process.stderr.write(`Verso could not start, because of a mistake of its own: ${error.message}\n`);
    process.exitCode = 1;
  }
}
