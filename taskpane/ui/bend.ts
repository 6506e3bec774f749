/** Shape of a bent tool for the drawing: where the parts lie, as shares of the deflection at the tip. */

interface Piece {
  readonly length: number;
  readonly diameter: number;
}

/**
 * Share of the tip's deflection at heights from the tip to the holder, for a side load at the tip of a stepped round
 * bar held at the holder. Curvature M/(E·I) with M ∝ height and I ∝ d⁴, integrated twice; E and the force cancel.
 * Only the shape: the size of the deflection comes with the row.
 *
 * @param pieces - from the tip to the holder
 * @returns points [height from the tip, share], share 1 at the tip and 0 at the holder
 */
export function bentShape(pieces: readonly Piece[], perPiece = 16): [number, number][] {
  const heights: number[] = [0];
  const diameters: number[] = [];
  for (const piece of pieces) {
    if (!(piece.length > 0 && piece.diameter > 0)) continue;
    const from = heights[heights.length - 1]!;
    for (let i = 1; i <= perPiece; i++) {
      heights.push(from + (piece.length * i) / perPiece);
      diameters.push(piece.diameter);
    }
  }
  const n = diameters.length;
  if (n === 0) return [];
  const deflection = new Array<number>(n + 1).fill(0);
  let slope = 0;
  // From the holder (clamped) towards the tip; within a slice the curvature is linear, so both integrals are exact.
  for (let i = n - 1; i >= 0; i--) {
    const step = heights[i + 1]! - heights[i]!;
    const stiffness = diameters[i]! ** 4;
    const far = heights[i + 1]! / stiffness;
    const near = heights[i]! / stiffness;
    deflection[i] = deflection[i + 1]! + slope * step + (far / 3 + near / 6) * step * step;
    slope += ((far + near) / 2) * step;
  }
  const tip = deflection[0]!;
  return heights.map((height, i) => [height, deflection[i]! / tip]);
}

/** A round number (1, 2 or 5 times a power of ten) not above `value`. */
export function roundBelow(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value));
  const lead = value / power;
  return (lead >= 5 ? 5 : lead >= 2 ? 2 : 1) * power;
}
