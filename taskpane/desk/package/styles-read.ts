/** What the desk shows of a file's looks: number format, bold, italic, colours, alignment. Pure. */
import type { Style } from "../model/types.ts";
import type { Xml } from "./xml.ts";

/** Formats that files name by number only (ECMA-376 part 1, 18.8.30). */
export const BUILT_IN: Readonly<Record<number, string>> = {
  0: "General",
  1: "0",
  2: "0.00",
  3: "#,##0",
  4: "#,##0.00",
  9: "0%",
  10: "0.00%",
  11: "0.00E+00",
  12: "# ?/?",
  13: "# ??/??",
  14: "mm-dd-yy",
  15: "d-mmm-yy",
  16: "d-mmm",
  17: "mmm-yy",
  18: "h:mm AM/PM",
  19: "h:mm:ss AM/PM",
  20: "h:mm",
  21: "h:mm:ss",
  22: "m/d/yy h:mm",
  37: "#,##0 ;(#,##0)",
  38: "#,##0 ;[Red](#,##0)",
  39: "#,##0.00;(#,##0.00)",
  40: "#,##0.00;[Red](#,##0.00)",
  45: "mm:ss",
  46: "[h]:mm:ss",
  47: "mmss.0",
  48: "##0.0E+0",
  49: "@",
};

/** Colours by number (ECMA-376 part 1, 18.8.27); 0 to 7 repeat 8 to 15. */
const INDEXED =
  "000000 FFFFFF FF0000 00FF00 0000FF FFFF00 FF00FF 00FFFF 800000 008000 000080 808000 800080 008080 C0C0C0 808080 9999FF 993366 FFFFCC CCFFFF 660066 FF8080 0066CC CCCCFF 000080 FF00FF FFFF00 00FFFF 800080 800000 008080 0000FF 00CCFF CCFFFF CCFFCC FFFF99 99CCFF FF99CC CC99FF FFCC99 3366FF 33CCCC 99CC00 FFCC00 FF9900 FF6600 666699 969696 003366 339966 003300 333300 993300 993366 333399 333333".split(
    " ",
  );

/** Order in which files count the theme's colours; the theme itself lists dark before light. */
const THEME_ORDER = [
  "lt1",
  "dk1",
  "lt2",
  "dk2",
  "accent1",
  "accent2",
  "accent3",
  "accent4",
  "accent5",
  "accent6",
  "hlink",
  "folHlink",
];

/** Colours of a theme in the order in which cells count them. */
export function readTheme(xml: Xml): string[] {
  const found = new Map<string, string>();
  xml.root("a:theme").children((name) => {
    if (name !== "a:themeElements") return;
    xml.children((part) => {
      if (part !== "a:clrScheme") return;
      xml.children((slot) => {
        xml.children((colour) => {
          const value = colour === "a:sysClr" ? xml.attribute("lastClr") : xml.attribute("val");
          if (value && /^[0-9A-Fa-f]{6}$/.test(value)) found.set(slot.slice(2), value);
        });
      });
    });
  });
  return THEME_ORDER.map((slot) => found.get(slot) ?? "");
}

/** A colour just opened as "#rrggbb". */
function colour(xml: Xml, theme: readonly string[]): string | undefined {
  const rgb = xml.attribute("rgb");
  let base = rgb && /^(?:[0-9A-Fa-f]{2})?[0-9A-Fa-f]{6}$/.test(rgb) ? rgb.slice(-6) : undefined;
  const number = (name: string) => {
    const text = xml.attribute(name);
    return text === undefined ? undefined : Number(text);
  };
  const slot = number("theme");
  if (!base && slot !== undefined) base = theme[slot] || undefined;
  const index = number("indexed");
  if (!base && index !== undefined) base = INDEXED[index < 8 ? index : index - 8];
  if (!base) return undefined;
  const tint = Math.max(-1, Math.min(1, number("tint") ?? 0));
  const part = (at: number) => {
    const value = Number.parseInt(base.slice(at, at + 2), 16);
    const shaded = tint < 0 ? value * (1 + tint) : value + (255 - value) * tint;
    return Math.round(shaded).toString(16).padStart(2, "0");
  };
  return `#${part(0)}${part(2)}${part(4)}`;
}

const on = (xml: Xml): boolean => !/^(?:0|false)$/.test(xml.attribute("val") ?? "1");

/** One look for each entry of the file's cell formats, in the file's order. */
export function readStyles(xml: Xml, theme: readonly string[]): Style[] {
  const formats = new Map<number, string>();
  const fonts: Partial<Style>[] = [];
  const fills: (string | undefined)[] = [];
  const styles: Style[] = [];
  xml.root("styleSheet").children((section) => {
    if (section === "numFmts")
      xml.children((name) => {
        if (name === "numFmt") formats.set(Number(xml.attribute("numFmtId")), xml.attribute("formatCode") ?? "General");
      });
    else if (section === "fonts")
      xml.children((name) => {
        if (name !== "font") return;
        const font: { bold?: boolean; italic?: boolean; color?: string } = {};
        xml.children((inner) => {
          if (inner === "b" && on(xml)) font.bold = true;
          else if (inner === "i" && on(xml)) font.italic = true;
          else if (inner === "color") {
            const found = colour(xml, theme);
            if (found) font.color = found;
          }
        });
        fonts.push(font);
      });
    else if (section === "fills")
      xml.children((name) => {
        if (name !== "fill") return;
        let found: string | undefined;
        xml.children((inner) => {
          if (inner !== "patternFill" || xml.attribute("patternType") !== "solid") return;
          xml.children((paint) => {
            if (paint === "fgColor") found = colour(xml, theme);
          });
        });
        fills.push(found);
      });
    else if (section === "cellXfs")
      xml.children((name) => {
        if (name === "xf") styles.push(look(xml, formats, fonts, fills));
        if (styles.length > 65_536) throw xml.wrong("has more cell formats than a file can have");
      });
  });
  xml.finish();
  return styles.length > 0 ? styles : [{ numberFormat: "General" }];
}

function look(
  xml: Xml,
  formats: ReadonlyMap<number, string>,
  fonts: readonly Partial<Style>[],
  fills: readonly (string | undefined)[],
): Style {
  const id = Number(xml.attribute("numFmtId") ?? 0);
  const fill = fills[Number(xml.attribute("fillId") ?? 0)];
  let align: Style["align"];
  let wrap = false;
  let locked = true;
  const font = fonts[Number(xml.attribute("fontId") ?? 0)];
  xml.children((name) => {
    if (name === "alignment") {
      const across = xml.attribute("horizontal");
      if (across === "left" || across === "center" || across === "right") align = across;
      wrap = /^(?:1|true)$/.test(xml.attribute("wrapText") ?? "");
    } else if (name === "protection") locked = !/^(?:0|false)$/.test(xml.attribute("locked") ?? "1");
  });
  return {
    numberFormat: formats.get(id) ?? BUILT_IN[id] ?? "General",
    ...font,
    ...(fill ? { fill } : {}),
    ...(align ? { align } : {}),
    ...(wrap ? { wrap } : {}),
    ...(locked ? {} : { locked: false }),
  };
}
