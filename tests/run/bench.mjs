// A thread at work on orders, watched from outside: it is given so much processor time, and begun anew when it does not end.
import path from "node:path";
import { Worker } from "node:worker_threads";

/** Longer than any test waits for something [ms]: what it waits for never comes. */
const IDLE = 10_000;
const LOOK = 50;

export function bench(shim) {
  let worker;

  async function close() {
    const old = worker;
    worker = undefined;
    await old?.terminate();
  }

  /** The answer; "late" when there is none within `ms` of processor time, whatever else the machine does. */
  async function ask(order, ms) {
    worker ??= new Worker(path.join(import.meta.dirname, "trial.mjs"), {
      workerData: { shim },
      stdout: true,
      stderr: true,
      resourceLimits: { maxOldGenerationSizeMb: 2048 },
    });
    const asked = worker;
    const start = process.cpuUsage();
    const { idle: waited } = asked.performance.eventLoopUtilization();
    let listeners;
    let look;
    const answer = await new Promise((resolve) => {
      look = setInterval(() => {
        const { user, system } = process.cpuUsage(start);
        const { idle } = asked.performance.eventLoopUtilization();
        if ((user + system) / 1000 > ms || idle - waited > IDLE) resolve("late");
      }, LOOK);
      listeners = {
        message: resolve,
        error: (problem) => resolve({ broken: String(problem?.message ?? problem) }),
        exit: () => resolve({ broken: "it ended itself" }),
      };
      for (const [event, listener] of Object.entries(listeners)) asked.on(event, listener);
      asked.postMessage(order);
    });
    clearInterval(look);
    for (const [event, listener] of Object.entries(listeners)) asked.off(event, listener);
    if (answer === "late" || answer.broken !== undefined) await close();
    return answer;
  }

  return { ask, close, renew: close };
}
