/** How far round a thread mill's profile is engaged, by the law of cosines at very many places of the profile. */
import { describe, expect, it } from "vitest";
import { type ThreadPass, threadEngagement } from "../../src/mill/threadforce.ts";

function brute({ holeDiameter, cutterDiameter, startDepth, endDepth, internal }: ThreadPass): number {
  const R = holeDiameter / 2;
  const side = internal ? 1 : -1;
  const e = internal ? R + endDepth - cutterDiameter / 2 : R - endDepth + cutterDiameter / 2;
  let most = 0;
  const n = 20_000;
  for (let i = 0; i < n; i++) {
    const u = (endDepth * i) / n;
    const rc = cutterDiameter / 2 - u;
    // what the passes before left of the wall at this place of the profile
    const wall = R + side * Math.max(0, startDepth - u);
    // wall² = e² + rc² ± 2·e·rc·cos θ
    const cosine = (side * (wall * wall - e * e - rc * rc)) / (2 * e * rc);
    most = Math.max(most, Math.acos(Math.min(1, Math.max(-1, cosine))));
  }
  return (most * 180) / Math.PI;
}

describe("engagement of a thread mill's profile (brute force)", () => {
  for (const internal of [true, false])
    for (const [holeDiameter, cutterDiameter, startDepth, endDepth] of [
      [8.5, 7, 0, 0.8],
      [8.5, 7, 0.4, 0.8],
      [8.5, 5, 0.7, 0.8],
      [20, 10, 0, 1.5],
      [20, 10, 1.2, 1.5],
      // a cutter that is deep for its size: outside the widest place lies between the tip and the wall
      [4, 4, 0, 1.9],
      [4, 3.9, 0.3, 1.9],
      [6, 4, 0.1, 1.8],
    ] as const)
      it(`${internal ? "inside" : "outside"}, ${holeDiameter}, cutter ${cutterDiameter}, ${startDepth} to ${endDepth}`, () => {
        const pass = { holeDiameter, cutterDiameter, startDepth, endDepth, internal };
        expect(Math.abs(threadEngagement(pass) - brute(pass))).toBeLessThan(0.02);
      });
});
