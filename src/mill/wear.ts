/**
 * Wear value to start with: how far the path is moved so that the first part comes out where it is wanted, although the tool
 * bends. Half of the expected error is not enough: the deeper path cuts more, bends more and leaves some of it again.
 */
import { finite, positive } from "../check.ts";
import { root } from "../numeric.ts";

/**
 * Amount to put into the radius wear value under cutter compensation before the first part: positive moves the path away from the
 * wall, negative into it, inside and outside alike (as in WEARCHANGE).
 *
 *   wall(T + d) = T solved for d;   wear = −d
 *
 * Solve it for the end of the band that bends least: a small internal thread can be cut again, a large one is scrap.
 *
 * @param wanted - T, depth of the wall that is wanted [mm], scalar, > 0
 * @param wall - depth of the wall [mm] that a path programmed to a depth [mm] leaves; rises with it
 * @param reach - furthest that the path may be moved, either way [mm], scalar, > 0
 * @returns wear value [mm], or null when the wall is out of reach
 * @throws TradeError "range" when wanted or reach is not above 0
 * @source DERIVED
 * @example
 * startWear(0.5, (depth) => depth / 1.25, 0.2) //=> -0.125
 * startWear(0.5, (depth) => depth / 1.25, 0.1) //=> null
 * startWear(0.5, (depth) => depth + 0.02, 0.1) //=> 0.02
 */
export function startWear(wanted: number, wall: (depth: number) => number, reach: number): number | null {
  const T = positive("wanted", wanted);
  const most = positive("reach", reach);
  // Each place is asked for once: the root starts from two that are known.
  const known = new Map<number, number>();
  const off = (d: number) => {
    const seen = known.get(d);
    if (seen !== undefined) return seen;
    const found = finite("wall", wall(T + d) - T);
    known.set(d, found);
    return found;
  };
  const here = off(0);
  const close = 1e-8 * T;
  if (Math.abs(here) <= close) return 0;
  // the answer lies on the side of the error: look as far as the error first, then double
  const sense = here < 0 ? 1 : -1;
  const limit = sense > 0 ? most : Math.min(most, T * (1 - 1e-6));
  let near = 0;
  for (let far = Math.min(limit, Math.abs(here)); ; far = Math.min(limit, 2 * far)) {
    if (off(sense * far) * here <= 0) {
      const d = root(off, sense * near, sense * far, close);
      return d === 0 ? 0 : -d;
    }
    if (far >= limit) return null;
    near = far;
  }
}
