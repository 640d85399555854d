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
  try {
    const { madeOne } = await import("./madeOne.mjs");
    await import(await madeOne());
  } catch (error) {
    if (error.code === "ERR_MODULE_NOT_FOUND") {
      process.stderr.write("Verso is not installed yet. Run `npm ci` in its folder, then try again.\n");
      process.exitCode = 2;
      return;
    }
    process.stderr.write(`Verso could not start, because of a mistake of its own: ${error.message}\n`);
    process.exitCode = 1;
  }
}
