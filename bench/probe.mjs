// Loaded before the command line: when the process ends, it tells on file descriptor 3 what the search took.
import { writeSync } from "node:fs";
import { isMainThread } from "node:worker_threads";

const clock = process.cpuUsage.bind(process);
const seconds = ({ user, system }) => (user + system) / 1e6;

let begin = null;
// The command line first asks for processor time when the heap is read and its search begins.
process.cpuUsage = (before) => {
  begin ??= { cpu: seconds(clock()), bytes: process.memoryUsage.rss() };
  return clock(before);
};

if (isMainThread)
  process.on("exit", () => {
    const cpu = seconds(clock());
    const peak = process.resourceUsage().maxRSS * 1024;
    const search = begin && { cpuSeconds: cpu - begin.cpu, grownBytes: peak - begin.bytes };
    writeSync(3, JSON.stringify({ wholeCpuSeconds: cpu, ...search }));
  });
