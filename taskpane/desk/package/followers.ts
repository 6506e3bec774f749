/** Parts beside the sheets in which something hangs on rows or speaks of sheets, and how each follows. */

import { areaText, readArea } from "../model/address.ts";
import { FileError } from "../model/types.ts";
import { movedDrawing, movedPivotSource, movedVml, pivotArea } from "./anchors.ts";
import type { Parts } from "./parts.ts";
import type { Plan, SheetPlan } from "./replay.ts";
import { movedArea } from "./rows.ts";
import { type Mover, movedPart } from "./walk.ts";
import type { WorkbookInfo } from "./workbook-read.ts";

export interface Follower {
  readonly part: string;
  readonly change: (text: string) => string;
}

export function followers(
  parts: Parts,
  info: WorkbookInfo,
  plan: Plan,
  moverOf: (sheet: SheetPlan | undefined) => Mover,
): Follower[] {
  const found: Follower[] = [];
  const seen = new Set<string>();
  const add = (part: string, change: (text: string) => string) => {
    if (seen.has(part.toLowerCase())) return;
    seen.add(part.toLowerCase());
    found.push({ part, change });
  };
  const elsewhere = moverOf(undefined);
  for (const sheet of plan.sheets) {
    if (!sheet.entry) continue;
    const mover = moverOf(sheet);
    for (const { type, target, external } of parts.relationships(sheet.entry.part)) {
      if (external || !parts.has(target)) continue;
      if (type === "drawing") {
        add(target, (text) =>
          movedPart(sheet.moves.length > 0 ? movedDrawing(text, target, mover.row) : text, target, mover),
        );
        for (const chart of parts.relationships(target))
          if (!chart.external && /^chart(?:Ex)?$/.test(chart.type) && parts.has(chart.target))
            add(chart.target, (text) => movedPart(text, chart.target, elsewhere));
      } else if (type === "ctrlProp") add(target, (text) => movedPart(text, target, mover));
      else if (sheet.moves.length === 0) continue;
      else if (type === "comments" || type === "threadedComment") add(target, (text) => movedPart(text, target, mover));
      else if (type === "vmlDrawing") add(target, (text) => movedVml(text, mover.row));
      else if (type === "pivotTable") {
        checkPivot(parts, target, sheet);
        add(target, (text) => movedPart(text, target, mover));
      }
    }
  }
  for (const { type, target, external } of info.relationships) {
    if (type !== "pivotCacheDefinition" || external || !parts.has(target)) continue;
    add(target, (text) =>
      movedPivotSource(text, target, (name, ref) => {
        const sheet = plan.sheets.find((s) => s.entry?.name.toLowerCase() === name.toLowerCase());
        const area = readArea(ref);
        const moved = sheet && area ? movedArea(area, sheet.moves) : undefined;
        const unmoved = moved && area && moved.top === area.top && moved.bottom === area.bottom;
        return { sheet: sheet?.name ?? name, ref: moved && !unmoved ? areaText(moved) : ref };
      }),
    );
  }
  return found;
}

/** A pivot table moves as a whole or not at all. */
function checkPivot(parts: Parts, part: string, sheet: SheetPlan): void {
  const area = pivotArea(parts.xml(part), readArea);
  const moved = area && movedArea(area, sheet.moves);
  if (area && (!moved || moved.bottom - moved.top !== area.bottom - area.top))
    throw new FileError(
      "unsupported",
      `Rows cannot be inserted or deleted inside of the pivot table in ${areaText(area)} on the sheet "${sheet.name}".`,
    );
}
