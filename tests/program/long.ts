/** A program of so many blocks: circles, helices, straight cuts and holes in turn. */
export function long(blocks: number): string {
  const lines = ["G21 G90 G94", "T1 M6", "S8000 M3"];
  for (let n = 0; lines.length < blocks; n++) {
    const x = (n % 300) * 2.5;
    const y = Math.floor(n / 300) * 2.5;
    lines.push(`G0 X${x} Y${y}`, "G0 Z2.", "G1 Z-10. F300.", `G1 X${(x + 1.153).toFixed(3)}`);
    for (let t = 0; t < 8; t++)
      lines.push(`G3 X${(x + 1.153).toFixed(3)} Y${y} Z${(-10 + 1.25 * t).toFixed(3)} I-1.153 J0.`);
    lines.push(`G1 X${x} F900.`, "G0 Z2.");
  }
  lines.push("M30");
  return lines.join("\n");
}
