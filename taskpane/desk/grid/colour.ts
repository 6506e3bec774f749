/** Contrast of colours after WCAG 2.2 (relative luminance and contrast ratio). */
function luminance(colour: string): number {
  const hex = /^#?(?:[0-9a-f]{2})?([0-9a-f]{6})$/i.exec(colour)?.[1];
  if (!hex) return 1;
  const [r, g, b] = [0, 2, 4].map((at) => {
    const part = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
}

export function contrast(one: string, other: string): number {
  const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (light! + 0.05) / (dark! + 0.05);
}

/** Black or white, whichever can be read better on a colour. */
export const readableOn = (colour: string): string =>
  contrast("#000000", colour) >= contrast("#ffffff", colour) ? "#000000" : "#ffffff";
