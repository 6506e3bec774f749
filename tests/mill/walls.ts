import { type BluntTool, wallLeft } from "../../src/mill/bending.ts";

/** Wall after each of some passes, from the stock's face on. */
export function wallsLeft({ depths, ...tool }: BluntTool & { readonly depths: readonly number[] }): number[] {
  let wall = 0;
  return depths.map((depth) => {
    wall = wallLeft(tool, wall, depth);
    return wall;
  });
}
