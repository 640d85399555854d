// Only what the oldest Node with modules can read.
const oldest = [20, 19];

export function nodeIsNewEnough() {
  const [major, minor] = process.versions.node.split(".").map(Number);
  if (major > oldest[0] || (major === oldest[0] && minor >= oldest[1])) return true;
  process.stderr.write(
    `Verso needs Node ${oldest.join(".")} or newer; this is Node ${process.versions.node}. ` +
      "Install a newer Node, then try again.\n",
  );
  process.exitCode = 2;
  return false;
}
