// No static imports: an old Node must reach the line that says so.
import("./node-version.mjs").then(({ nodeIsNewEnough }) => {
  if (nodeIsNewEnough()) return import("./start-app.mjs");
});
