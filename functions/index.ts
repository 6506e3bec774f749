/** Every worksheet function, by file. The name of an export is the function's id in the namespace CUT. */

export * from "./cost.ts";
export * from "./drill-size.ts";
export * from "./drilling.ts";
export * from "./engagement.ts";
export * from "./force.ts";
export * from "./gauging.ts";
export * from "./holes.ts";
export * from "./plan.ts";
export * from "./program.ts";
export * from "./quote.ts";
export * from "./speed.ts";
export * from "./thread-path.ts";
export * from "./thread-size.ts";
export * from "./time.ts";
export * from "./tool.ts";
